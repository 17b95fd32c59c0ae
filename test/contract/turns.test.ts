import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addRouter, addSomebody, made, planFor } from "./crib.ts";
import { manyStraights, sendFile } from "./import-files.ts";
import { openShop, PANEL_BIT, type Shop, TABLE_ROUTER } from "./shop.ts";
import { turnsDuring } from "./turns-during.ts";

let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, undefined, (release) => afterAll(release));
});

const { name: _bit, notes: _notes, ...BIT } = PANEL_BIT;
const { name: _router, ...ROUTER } = TABLE_ROUTER;
const PLAN = {
  ...{ bit: BIT, router: ROUTER, mounting: "table", woodId: "black-cherry" },
  cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 460, grain: "long" }] },
};
/** The narrowest bit in the deepest groove of the hardest wood. */
const DEEP = {
  ...PLAN,
  bit: { form: { kind: "straight", diameterMm: 3, cuttingLengthMm: 60 }, shankDiameterMm: 6.35, wings: 2 },
  cut: { kind: "groove", depthMm: 60, edges: [{ lengthMm: 460, grain: "long" }] },
};

const post = (path: string, body: object, key = shop.managerKey) =>
  shop.app.inject({ method: "POST", url: path, headers: { authorization: `Bearer ${key}` }, payload: body });

describe("one request never stops the others", () => {
  test("a body with more than is allowed is refused by its count, before what is in it", async () => {
    const requests = Array.from({ length: 20_000 }, () => ({ bit: 1 }));
    const { statusCode, body } = await post("/v1/plans/preview-batch", { requests });
    expect(statusCode).toBe(422);
    expect(JSON.parse(body).errors).toMatchObject([
      { pointer: "/requests", accepted: expect.stringMatching(/1000/) },
    ]);
  });

  test("a large wrong body is told its first fault, a small one all of them", async () => {
    const wrong = (count: number) => ({
      data: Array.from({ length: count }, () => ({ name: "", role: "king", colour: "red" })),
    });
    const faults = async (count: number) =>
      JSON.parse((await post("/v1/people/batch", wrong(count))).body).errors;
    expect((await faults(2)).length).toBe(6);
    expect((await faults(500)).length).toBe(1);
  });

  test("others have their turn while a batch and a table are computed", async () => {
    const requests = Array.from({ length: 400 }, () => PLAN);
    const batch = () => post("/v1/plans/preview-batch", { requests });
    await batch();
    expect(await turnsDuring(batch)).toBeGreaterThan(5);
    const bits = await Promise.all(Array.from({ length: 12 }, () => addBit(shop)));
    const routers = await Promise.all(Array.from({ length: 4 }, () => addRouter(shop)));
    const woods = (await shop.ask("GET", "/v1/woods")).body.data.map(({ id }: { id: string }) => id);
    const ids = (records: { id: string }[]) => records.map(({ id }) => id);
    const table = { bitIds: ids(bits), routerIds: ids(routers), woodIds: woods, mounting: "table" };
    const answers: number[] = [];
    const turns = await turnsDuring(async () =>
      answers.push((await post("/v1/plans/shop-table", table)).statusCode),
    );
    expect(answers).toEqual([200]);
    expect(turns).toBeGreaterThan(5);
    const twice = { ...table, bitIds: [bits[0].id, bits[0].id] };
    expect((await post("/v1/plans/shop-table", twice)).statusCode).toBe(422);
  });

  test("others have their turn while the shop's policy changes a large rack, all of it by the time of the answer", async () => {
    const own = await openShop();
    await sendFile(own, manyStraights(1000));
    const tighten = () =>
      own.ask("PUT", "/v1/shop-policy", {
        body: { layer: { rimSpeedMaxMPerS: 10, inspectionIntervalDays: 20 } },
        headers: { "If-Match": "*" },
      });
    expect(await turnsDuring(tighten)).toBeGreaterThan(5);
    const { body } = await own.ask("GET", "/v1/bits?limit=200");
    const daysUntilDue = body.data.map(
      ({ createdAt, inspectionDueAt }: { createdAt: string; inspectionDueAt: string }) =>
        Math.round((Date.parse(inspectionDueAt) - Date.parse(createdAt)) / 86_400_000),
    );
    expect(daysUntilDue).toEqual(Array(200).fill(20));
  });

  test("one key has one large computation at a time, and is told when to come again", async () => {
    const requests = Array.from({ length: 200 }, () => PLAN);
    const batch = (key: string) => post("/v1/plans/preview-batch", { requests }, key);
    const { key } = await addSomebody(shop, "member");
    const [first, second, another] = await Promise.all([
      batch(shop.managerKey),
      batch(shop.managerKey),
      batch(key),
    ]);
    // Which of the two is let in an engine that is waited for may decide otherwise.
    const [admitted, refused] = [first, second].sort((one, other) => one.statusCode - other.statusCode);
    expect([admitted?.statusCode, refused?.statusCode, another.statusCode]).toEqual([200, 429, 200]);
    expect(refused?.headers["retry-after"]).toBe("1");
    expect((await batch(shop.managerKey)).statusCode).toBe(200);
  });
});

describe("a plan has bounds", () => {
  test("of passes: what would take dozens is refused with what to do", async () => {
    const { status, body } = await shop.ask("POST", "/v1/plans/preview?profiles=true", { body: DEEP });
    expect(status).toBe(200);
    expect(body).toMatchObject({ verdict: "do-not-run", passes: [], profiles: [] });
    expect(body.findings.map(({ code }: { code: string }) => code)).toContain("too-many-passes");
  });

  test("of what is kept: no polygons, and lists hold plans in short", async () => {
    const [bit, router] = [await addBit(shop), await addRouter(shop)];
    const refused = await shop.ask("POST", "/v1/plans?profiles=true", { body: planFor(bit, router) });
    expect(refused.status).toBe(422);
    const { id } = await made(shop, "/v1/plans", planFor(bit, router));
    const { body } = await shop.ask("GET", "/v1/plans?limit=200");
    const listed = body.data.find((each: { id: string }) => each.id === id);
    expect(listed).toMatchObject({
      bitId: bit.id,
      routerId: router.id,
      verdict: "run-with-care",
      cutKind: "panel",
    });
    expect(JSON.stringify(listed).length).toBeLessThan(1000);
  });

  test("of points: an arc's corners are no more than its tolerance asks for", async () => {
    const cove = { ...PLAN, bit: { ...BIT, form: { ...BIT.form, face: "cove" } } };
    const { body } = await shop.ask("POST", "/v1/plans/preview?profiles=true", { body: cove });
    for (const { pieces } of body.profiles) expect(pieces[0].boundary.length).toBeLessThan(100);
  });
});

test("a body that is nested ten thousand deep is refused before anything walks it", async () => {
  const deep = `${"[".repeat(10_000)}${"]".repeat(10_000)}`;
  for (const body of [
    `{"name":"x","notes":${deep}}`,
    `{"a":${'{"a":'.repeat(10_000)}1${"}".repeat(10_001)}`,
  ]) {
    const answer = await shop.ask("POST", "/v1/bits", { body, headers: { "Idempotency-Key": "deep" } });
    expect([answer.status, answer.body.code]).toEqual([400, "not-json"]);
  }
  const quoted = { name: `Deep ${"[".repeat(80)}`, kind: "drawer" };
  expect((await shop.ask("POST", "/v1/places", { body: quoted })).status).toBe(201);
});
