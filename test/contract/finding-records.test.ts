import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addRouter, made, planFor } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

let shop: Shop;
beforeAll(async () => {
  shop = await openShop({}, undefined, afterAll);
});

/** The names on all pages of a list, two on each. */
async function names(path: string, query = ""): Promise<string[]> {
  const found: string[] = [];
  for (let cursor: string | null = ""; cursor !== null; ) {
    const { status, body } = await shop.ask(
      "GET",
      `${path}?limit=2&${query}${cursor && `&cursor=${cursor}`}`,
    );
    expect(status, body.detail).toBe(200);
    found.push(...body.data.map(({ name = "" }: { name?: string }) => name));
    cursor = body.nextCursor;
  }
  return found;
}

describe("people", () => {
  const PEOPLE = [
    ["Özlem, bench 4", "member"],
    ["andrea", "instructor"],
    ["Robin", "student"],
    ["Robin", "member"],
    ["Émile", "student"],
  ] as const;
  beforeAll(async () => {
    for (const [name, role] of PEOPLE) await made(shop, "/v1/people", { name, role });
    const [{ id, version }] = (await shop.ask("GET", "/v1/people?q=andrea")).body.data;
    await shop.ask("PATCH", `/v1/people/${id}`, {
      body: { state: "left" },
      headers: { "If-Match": `"${version}"` },
    });
  });

  test("are sorted by name, whatever their capitals and accents, page by page", async () => {
    const sorted = ["andrea", "Émile", "Özlem, bench 4", "Robin", "Robin"];
    expect(await names("/v1/people", "sort=name")).toEqual(sorted);
    expect(await names("/v1/people", "sort=-name")).toEqual(sorted.toReversed());
    expect(await names("/v1/people", "sort=createdAt")).toEqual(PEOPLE.map(([name]) => name));
    expect(await names("/v1/people", "sort=-createdAt")).toEqual(PEOPLE.map(([name]) => name).toReversed());
  });

  test("are found by a part of their name, by role and by state, together too", async () => {
    expect(await names("/v1/people", "q=OZLEM")).toEqual(["Özlem, bench 4"]);
    expect(await names("/v1/people", "q=e&sort=name")).toEqual(["andrea", "Émile", "Özlem, bench 4"]);
    expect(await names("/v1/people", "role=student")).toEqual(["Robin", "Émile"]);
    expect(await names("/v1/people", "state=left")).toEqual(["andrea"]);
    expect(await names("/v1/people", "role=member&q=robin&state=active&sort=-name")).toEqual(["Robin"]);
    expect(await names("/v1/people", "q=%25")).toEqual([]);
  });

  test.each(["role=king", "sort=shoe-size", "q=", "state=gone"])("are not found by %s", async (query) => {
    const { status, body } = await shop.ask("GET", `/v1/people?${query}`);
    expect([status, body.errors[0].pointer]).toEqual([422, `/${query.split("=")[0]}`]);
  });
});

test("routers, courses, places, keys and approvals are found and sorted by name alike", async () => {
  await addRouter(shop, { name: "Table" });
  await addRouter(shop, { name: "Bench" });
  expect(await names("/v1/routers", "sort=name")).toEqual(["Bench", "Table"]);
  expect(await names("/v1/routers", "q=bEn")).toEqual(["Bench"]);
  for (const name of ["Second year", "First year"]) {
    await made(shop, "/v1/courses", { name, policy: {}, requirements: {}, isTwoPerson: false });
  }
  expect(await names("/v1/courses", "q=YEAR&sort=name")).toEqual(["First year", "Second year"]);
  for (const path of ["/v1/places", "/v1/keys", "/v1/approvals"]) {
    const { status } = await shop.ask("GET", `${path}?q=x&sort=-name`);
    expect([path, status]).toEqual([path, 200]);
  }
});

describe("stored plans", () => {
  test("are found by bit, router, wood, kind of cut, verdict and name", async () => {
    const [bit, other, router] = [await addBit(shop), await addBit(shop), await addRouter(shop)];
    const keep = (name: string, of: { id: string }, more: object = {}) =>
      made(shop, "/v1/plans", { name, ...planFor(of, router), ...more });
    await keep("Cherry doors", bit);
    await keep("Maple doors", other, { woodId: "sugar-maple" });
    await keep("Handheld", bit, { mounting: "handheld" });
    const of = (query: string) => names("/v1/plans", query);
    expect(await of(`bitId=${bit.id}`)).toEqual(["Cherry doors", "Handheld"]);
    expect(await of(`bitId=${bit.id}&verdict=do-not-run`)).toEqual(["Handheld"]);
    expect(await of(`routerId=${router.id}&sort=-createdAt`)).toEqual([
      "Handheld",
      "Maple doors",
      "Cherry doors",
    ]);
    expect(await of("woodId=sugar-maple")).toEqual(["Maple doors"]);
    expect(await of("cutKind=panel&q=doors&sort=name")).toEqual(["Cherry doors", "Maple doors"]);
    expect(await of("cutKind=groove")).toEqual([]);
    const { status } = await shop.ask("GET", "/v1/plans?cutKind=hole");
    expect(status).toBe(422);
  });
});

test("bits that fall due within some days are listed with those that are due", async () => {
  const due = async (query: string) => (await shop.ask("GET", `/v1/stock/due?${query}`)).body.data;
  expect(await due("")).toEqual([]);
  expect(await due("withinDays=1")).toEqual([]);
  const soon = await due("withinDays=366");
  expect(soon.length).toBeGreaterThan(0);
  expect(soon[0]).toMatchObject({ reason: expect.stringMatching(/will be over/) });
  expect((await shop.ask("GET", "/v1/stock/due?withinDays=400")).status).toBe(422);
});
