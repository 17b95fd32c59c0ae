import { describe, expect, test } from "vitest";
import { openShop, PANEL_BIT, sharedShop, TABLE_ROUTER } from "./shop.ts";

const PLAN = {
  bit: { form: PANEL_BIT.form, shankDiameterMm: 12.7, wings: 2, massG: 340 },
  router: { minRpm: 8000, maxRpm: 22_000, dial: { marks: { first: 1, last: 6 } } },
  mounting: "table",
  woodId: "black-cherry",
  cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
};

const KINDS: readonly [string, string, object][] = [
  ["bits", "/v1/bits", PANEL_BIT],
  ["routers", "/v1/routers", TABLE_ROUTER],
  ["people", "/v1/people", { name: "Robin", role: "member" }],
  ["plans", "/v1/plans", PLAN],
];

const empty = sharedShop();

describe.each(KINDS)("other programs tie their own records to %s", (_name, path, body) => {
  test("by what they call them, and find many by their ids at once", async () => {
    const { ask } = await openShop();
    const ids: string[] = [];
    for (const externalId of ["job 7 / part 3", "job 7 / part 3", "another"]) {
      const { status, body: made } = await ask("POST", path, { body: { ...body, externalId } });
      expect([status, made.externalId]).toEqual([201, externalId]);
      ids.push(made.id);
    }
    const listed = async (query: string) =>
      (await ask("GET", `${path}?${query}`)).body.data.map(({ id }: { id: string }) => id);
    expect(await listed(`externalId=${encodeURIComponent("job 7 / part 3")}`)).toEqual(ids.slice(0, 2));
    expect(await listed(`ids=${ids[2]},${ids[0]},nothing_1`)).toEqual([ids[0], ids[2]]);
    expect(await listed(`ids=${ids.join()}&externalId=another`)).toEqual([ids[2]]);
    expect(await listed(`ids=${ids.join()}&limit=1`)).toEqual([ids[0]]);
  });

  test.each(["ids=", "ids=a,,b", `ids=${Array(201).fill("a").join()}`, "externalId="])(
    "%s is a problem that names the parameter",
    async (query) => {
      const { status, body: problem } = await empty.ask("GET", `${path}?${query}`);
      expect([status, problem.errors[0].parameter ?? problem.errors[0].pointer]).toEqual([
        expect.any(Number),
        expect.stringContaining(query.slice(0, query.indexOf("="))),
      ]);
      expect(status).toBeGreaterThanOrEqual(400);
      expect(status).toBeLessThan(500);
    },
  );
});

test("what another program calls a person is erased with their name", async () => {
  const { ask } = await openShop();
  const { body: person } = await ask("POST", "/v1/people", {
    body: { name: "Robin", role: "member", externalId: "enrolled as Rowan of the second class" },
  });
  const erased = await ask("POST", `/v1/people/${person.id}/erase`, {
    body: { reason: "They asked for it." },
  });
  expect(erased.status).toBe(200);
  expect((await ask("GET", `/v1/people/${person.id}`)).text).not.toContain("Rowan");
  expect((await ask("GET", "/v1/events?limit=100")).text).not.toContain("Rowan");
});

test("woods are found by words of any of their names", async () => {
  const { ask } = await openShop();
  const found = async (q: string) =>
    (await ask("GET", `/v1/woods?q=${encodeURIComponent(q)}`)).body.data.map(({ id }: { id: string }) => id);
  expect(await found("cherry")).toEqual(["black-cherry"]);
  expect(await found("Quercus alba")).toEqual(["white-oak"]);
  expect(await found("oak")).toEqual(expect.arrayContaining(["red-oak", "white-oak"]));
  expect(await found("nothing of the kind")).toEqual([]);
});
