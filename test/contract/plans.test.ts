import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openShop, PANEL_BIT, type Shop, TABLE_ROUTER } from "./shop.ts";

const { name: _bitName, notes: _notes, ...BIT } = PANEL_BIT;
const { name: _routerName, ...ROUTER } = TABLE_ROUTER;

const EDGES = [
  { lengthMm: 310, grain: "end" },
  { lengthMm: 460, grain: "long" },
];
const REQUEST = {
  bit: BIT,
  router: ROUTER,
  mounting: "table",
  woodId: "black-cherry",
  cut: { kind: "panel", thicknessMm: 19, edges: EDGES },
};
const STRAIGHT = {
  form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
  shankDiameterMm: 12.7,
  wings: 2,
};

const preview = (shop: Shop, body: object, query = "") =>
  shop.ask("POST", `/v1/plans/preview${query}`, { body });

describe("a preview", () => {
  test("answers with everything a careful teacher would sign", async () => {
    const { status, body } = await preview(await openShop(), REQUEST);
    expect(status).toBe(200);
    expect(body).toMatchObject({
      verdict: "run-with-care",
      mounting: { requested: "table", allowed: "table-only" },
      speed: { bindingLimit: "marked-maximum", nextLimit: "diameter-chart", ceilingRpm: 12000 },
      wood: { id: "black-cherry" },
    });
    expect(body.speed.rpmHighest).toBeLessThanOrEqual(12000);
    expect(body.limits.filter(({ isBinding: binds }: { isBinding: boolean }) => binds)).toHaveLength(1);
    expect(body.passes.at(-1).kind).toBe("finish");
    for (const pass of body.passes) {
      expect(pass.secondsPerEdge).toHaveLength(EDGES.length);
      const percents = pass.uses.map(({ percent }: { percent: number }) => percent);
      expect(Math.max(...percents)).toBeLessThanOrEqual(100);
      expect(pass.heldBy).toBe(pass.uses[percents.indexOf(Math.max(...percents))].constraint);
    }
    expect(body.digest).toMatch(/^sha256:[0-9a-f]{64}$/);
    expect(body.precautions.length).toBeGreaterThan(10);
  });

  test("is the same, byte for byte, for the same input in another order of its members", async () => {
    const shop = await openShop();
    const turned = Object.fromEntries(Object.entries(REQUEST).reverse());
    expect((await preview(shop, turned)).text).toBe((await preview(shop, REQUEST)).text);
  });

  test("takes kept records by their ids, and rests on the same inputs as if they were written out", async () => {
    const shop = await openShop();
    const bit = (await shop.ask("POST", "/v1/bits", { body: PANEL_BIT })).body;
    const router = (await shop.ask("POST", "/v1/routers", { body: TABLE_ROUTER })).body;
    const byId = await preview(shop, { ...REQUEST, bit: { id: bit.id }, router: { id: router.id } });
    expect(byId.text).toBe((await preview(shop, REQUEST)).text);
  });

  test("speaks in the units asked for and shows the settings as a person reads them", async () => {
    const { body } = await preview(await openShop(), REQUEST, "?units=imperial");
    expect(body.speed.display.rimSpeed).toMatch(/^\d+(\.\d)? mph$/);
    expect(body.passes[0].display.height).toMatch(/ in$/);
    const sentences = [...body.steps, ...body.precautions, ...body.assumptions, ...body.mounting.reasons];
    for (const { text } of sentences) expect(text).not.toMatch(/\d (mm|m\/min|g)\b/);
  });

  test("keeps nothing", async () => {
    const shop = await openShop();
    await preview(shop, REQUEST);
    expect((await shop.ask("GET", "/v1/plans")).body.data).toEqual([]);
    expect((await shop.ask("GET", "/v1/events?limit=200")).text).not.toContain("plan.");
  });

  test("lets a request tighten the policy, and never loosen it", async () => {
    const shop = await openShop();
    // 48 m/s at 88.9 mm: 48 · 60 000 / (π · 88.9) = 10 311.95
    const tight = await preview(shop, { ...REQUEST, policy: { rimSpeedMaxMPerS: 48 } });
    expect(tight.body.speed).toMatchObject({ bindingLimit: "rim-speed", ceilingRpm: 10311 });
    const loose = await preview(shop, { ...REQUEST, policy: { rimSpeedMaxMPerS: 70 } });
    expect(loose.body.speed.ceilingRpm).toBe(12000);
  });

  test("names what would lift the binding limit and what not knowing costs", async () => {
    const router = { ...ROUTER, dial: { ...ROUTER.dial, readings: [] } };
    const { markedMaxRpm: _, ...unmarked } = BIT;
    const { body } = await preview(await openShop(), { ...REQUEST, bit: unmarked, router });
    expect(body.speed.raisedBy.code).toBe("smaller-bit");
    expect(body.speed.uncertainties.map(({ code }: { code: string }) => code)).toContain("dial");
  });
});

describe("the policy", () => {
  test("is listed rule by rule, with unit, reason and source, and its names are those a request may tighten", async () => {
    const shop = await openShop();
    const { status, body } = await shop.ask("GET", "/v1/policy");
    expect(status).toBe(200);
    const rim = body.data.find(({ name }: { name: string }) => name === "rimSpeedMaxMPerS");
    expect(rim).toMatchObject({ default: 56, unit: "m/s", stricter: "lower", source: "common practice" });
    for (const { name, default: usual } of body.data) {
      const { status: accepted } = await preview(shop, { ...REQUEST, policy: { [name]: usual } });
      expect(accepted, name).toBe(200);
    }
  });
});

describe("a stored plan", () => {
  test("is read back as it was answered, with what was asked", async () => {
    const shop = await openShop();
    const created = await shop.ask("POST", "/v1/plans", { body: { ...REQUEST, name: "Kitchen doors" } });
    expect(created.status).toBe(201);
    const read = await shop.ask("GET", String(created.headers["location"]));
    expect(read.body).toEqual(created.body);
    expect(read.body).toMatchObject({ name: "Kitchen doors", request: REQUEST });
    expect(read.body.plan).toEqual((await preview(shop, REQUEST)).body);
  });

  test("may be one that must not be run: the refusal is on record", async () => {
    const shop = await openShop();
    const { body } = await shop.ask("POST", "/v1/plans", { body: { ...REQUEST, mounting: "handheld" } });
    expect(body.plan).toMatchObject({ verdict: "do-not-run", passes: [], steps: [] });
    expect(body.plan.speed).toMatchObject({ rpm: null, rpmHighest: null, mark: null });
  });
});

describe("what cannot be planned is refused with the field and what is accepted, and kept nowhere", () => {
  type Case = [name: string, change: object, pointer: string, accepted: RegExp];
  const groove = (depthMm: number) => ({ kind: "groove", depthMm, edges: EDGES });
  const CASES: Case[] = [
    ["a wood that does not exist", { woodId: "ironbark-x" }, "/woodId", /GET \/v1\/woods/],
    ["a bit that is not on the rack", { bit: { id: "bit_0" } }, "/bit/id", /id of a bit/],
    ["a router that is not kept", { router: { id: "router_0" } }, "/router/id", /id of a router/],
    ["an empty edge list", { cut: { ...REQUEST.cut, edges: [] } }, "/cut/edges", /1 to 100/],
    [
      "a shank thicker than any collet",
      { router: { ...ROUTER, colletDiametersMm: [6.35] } },
      "/bit/shankDiameterMm",
      /at most 6.35/,
    ],
    ["an unknown kind of cut", { cut: { kind: "whittle", edges: EDGES } }, "/cut/kind", /edge/],
    ["a number as text", { bit: { ...BIT, wings: "2" } }, "/bit/wings", /whole number/],
    ["a misspelt field of the bit", { bit: { ...BIT, masG: 3 } }, "/bit/masG", /massG/],
    ["a misspelt field of the request", { woodID: "black-cherry" }, "/woodID", /woodId/],
    ["a loosened rule that is no rule", { policy: { rimSpeed: 90 } }, "/policy/rimSpeed", /rimSpeedMaxMPerS/],
    ["a height beyond the bit", { cut: { ...REQUEST.cut, heightMm: 90 } }, "/cut/heightMm", /at most/],
    ["a fence inside the pilot", { cut: { ...REQUEST.cut, fenceMm: 3 } }, "/cut/fenceMm", /at least 11/],
    ["a fence beyond the rim", { cut: { ...REQUEST.cut, fenceMm: 60 } }, "/cut/fenceMm", /reaches into/],
    ["a panel cut with a straight bit", { bit: STRAIGHT }, "/cut/kind", /panel-raising/],
    ["a groove with a piloted bit", { cut: groove(5) }, "/cut/kind", /without a pilot/],
    ["a groove deeper than the edges", { bit: STRAIGHT, cut: groove(40) }, "/cut/depthMm", /at most 25.4/],
    [
      "a groove narrower than the bit",
      { bit: STRAIGHT, cut: { ...groove(5), widthMm: 6 } },
      "/cut/widthMm",
      /12.7 to 150/,
    ],
  ];

  let shop: Shop;
  beforeAll(async () => {
    shop = await openShop({}, undefined, afterAll);
  });

  test.each(CASES)("%s", async (_, change, pointer, accepted) => {
    const { status, body } = await shop.ask("POST", "/v1/plans", { body: { ...REQUEST, ...change } });
    expect(status).toBe(422);
    expect(body.errors.map((error: { pointer: string }) => error.pointer)).toEqual([pointer]);
    expect(body.errors[0].accepted).toMatch(accepted);
    expect((await shop.ask("GET", "/v1/plans")).body.data).toEqual([]);
  });
});
