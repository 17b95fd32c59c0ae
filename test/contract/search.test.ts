import { bitSolid } from "@rimwise/domain";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addPlace, made, STRAIGHT_BIT } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

type Bit = {
  id: string;
  name: string;
  form: { kind: string; diameterMm: number };
  shankDiameterMm: number;
  state: string;
  massG?: number;
  homePlaceId?: string;
};
type Page = { data: Bit[]; nextCursor: string | null };

const RACK = [
  {
    name: "Raised panel, large",
    form: { kind: "panel-raising", diameterMm: 88.9, pilotDiameterMm: 22, profileHeightMm: 12, face: "cove" },
    shankDiameterMm: 12.7,
  },
  {
    name: "Raised panel, small",
    form: { kind: "panel-raising", diameterMm: 63.5, pilotDiameterMm: 19, profileHeightMm: 10, face: "ogee" },
    shankDiameterMm: 12.7,
  },
  { name: "Cove 19", form: { kind: "cove", diameterMm: 38.1, radiusMm: 12.7 }, shankDiameterMm: 12.7 },
  { name: "Cove 10", form: { kind: "cove", diameterMm: 25.4, radiusMm: 6.3 }, shankDiameterMm: 6.3 },
  { ...STRAIGHT_BIT, name: "Straight 12", notes: "Café; lent to the évening class" },
  { name: "Straight 6", form: { kind: "straight", diameterMm: 6, cuttingLengthMm: 20 }, shankDiameterMm: 6 },
  { name: "Фреза", form: { kind: "straight", diameterMm: 20, cuttingLengthMm: 30 }, shankDiameterMm: 12 },
];

const estimatedMassOf = ({ form, shankDiameterMm }: { form: object; shankDiameterMm: number }) =>
  bitSolid(Object({ form, shankDiameterMm, wings: 2 })).estimatedMassG;

let shop: Shop;
let rack: Bit[];
let drawer: { id: string };

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
  drawer = await addPlace(shop, "Drawer");
  rack = [];
  for (const [index, given] of RACK.entries()) {
    const home = index % 2 === 0 ? { homePlaceId: drawer.id } : {};
    const mass = { massG: index % 3 === 0 ? estimatedMassOf(given) : undefined };
    rack.push(
      await addBit(shop, { wings: 2, notes: undefined, markedMaxRpm: undefined, ...given, ...home, ...mass }),
    );
  }
});

const search = async (query: Record<string, string>) =>
  shop.ask("GET", `/v1/bits?${new URLSearchParams({ limit: "200", ...query })}`);
const found = async (query: Record<string, string>) =>
  (await search(query)).body.data.map(({ name }: Bit) => name);

describe("what people type", () => {
  test.each([
    ["3 1/2 panel", ["Raised panel, large"]],
    ["3½ panel", ["Raised panel, large"]],
    ["88.9", ["Raised panel, large"]],
    ["half inch shank cove", ["Raised panel, large", "Cove 19"]],
    ["Cove", ["Raised panel, large", "Cove 19", "Cove 10"]],
    ["COV", ["Raised panel, large", "Cove 19", "Cove 10"]],
    ["panels", ["Raised panel, large", "Raised panel, small"]],
    ["cove 1/2 radius", ["Cove 19"]],
    ["12 mm straight", ["Фреза"]],
    ["1/2 straight", ["Straight 12"]],
    ["cafe evening", ["Straight 12"]],
    ["фреза", ["Фреза"]],
    ["dado", ["Straight 12", "Straight 6", "Фреза"]],
    ["the bit", []],
    ["walrus", []],
    ["panel straight", []],
  ])("%s", async (q, names) => {
    expect(await found({ q })).toEqual(names);
  });

  test.each([
    '"',
    "'",
    '"panel',
    'panel"; DROP TABLE bits; --',
    "panel OR straight",
    "panel AND NOT cove",
    "NEAR(panel cove, 5)",
    "words : panel",
    "facets:staterack",
    "-panel",
    "pan*",
    "^panel",
    "(panel",
    "{words facets} : panel",
    "panel + cove",
    "🪚🔩",
    "panel 🪚",
    "\tpanel",
    "%_",
    "\\",
    "ＰＡＮＥＬ",
    "ﬁnger",
    "𐐷𐐷𐐷",
    "𞤀𞤁𞤂",
    "İ",
    "½".repeat(200),
    "1/".repeat(100),
    "9".repeat(200),
    "panel ".repeat(33),
    "x".repeat(200),
  ])("a hostile query is only words: %j", async (q) => {
    const { status, body, text } = await search({ q });
    expect(status, text).toBe(200);
    // Every word must be there: nothing typed widens a search or reaches another column.
    for (const bit of body.data) expect(/pan|cov|str|raised/i.test(bit.name)).toBe(true);
  });

  test.each(["", "x".repeat(201)])("a query of no or too many characters is refused", async (q) => {
    const answer = await search({ q });
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ in: "query", pointer: "/q" }]);
  });

  test("operators of the index are words like others", async () => {
    expect(await found({ q: "panel OR straight" })).toEqual([]);
    expect(await found({ q: "panel NOT cove" })).toEqual([]);
    expect(await found({ q: "pan*" })).toEqual(["Raised panel, large", "Raised panel, small"]);
  });
});

describe("filters combine", () => {
  test.each<[Record<string, string>, string[]]>([
    [{ kind: "cove" }, ["Cove 19", "Cove 10"]],
    [{ kind: "cove", shankDiameterMm: "12.7" }, ["Cove 19"]],
    [{ kind: "straight", q: "evening" }, ["Straight 12"]],
    [{ diameterMm: "6", toleranceMm: "0" }, ["Straight 6"]],
    [{ diameterMm: "6.5", toleranceMm: "0.5" }, ["Straight 6"]],
    [{ diameterMm: "6.5", toleranceMm: "0.4" }, []],
    [{ diameterMm: "6.3" }, ["Straight 6"]],
    [{ mass: "missing", kind: "straight" }, ["Straight 12", "Straight 6"]],
    [{ mass: "missing", kind: "panel-raising", clearance: "handheld" }, []],
    [{ q: "panel", clearance: "handheld,handheld-with-care" }, []],
    [{ q: "panel", clearance: "table-only,handheld" }, ["Raised panel, large", "Raised panel, small"]],
    [{ q: "straight", lacks: "mass,marking" }, ["Straight 12", "Straight 6", "Фреза"]],
  ])("%j", async (query, names) => {
    expect(await found(query)).toEqual(names);
  });

  test.each([
    ["/kind", { kind: "dragon" }],
    ["/state", { state: "lost" }],
    ["/diameterMm", { diameterMm: "0" }],
    ["/diameterMm", { diameterMm: "wide" }],
    ["/toleranceMm", { toleranceMm: "5.1" }],
    ["/mass", { mass: "no" }],
    ["/colour", { colour: "red" }],
  ])("a wrong %s is refused", async (pointer, query) => {
    const answer = await search(Object.fromEntries(Object.entries(query)));
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ in: "query", pointer }]);
  });
});

/** The same question as a plain filter over every bit: sizes of the rack are whole tenths of a millimetre. */
const asked = fc.record(
  {
    kind: fc.constantFrom("cove", "straight", "panel-raising", "chamfer"),
    diameterMm: fc.constantFrom(6, 12.7, 20, 25.4, 38.1, 63.5, 88.9, 50),
    shankDiameterMm: fc.constantFrom(6, 6.3, 12, 12.7, 8),
    state: fc.constantFrom("in-rack", "held"),
    mass: fc.constant("missing" as const),
    homePlaceId: fc.constantFrom("drawer", "nowhere"),
    toleranceMm: fc.constantFrom(0.05, 0.35, 0.75, 2.05),
  },
  { requiredKeys: [] },
);

test("search agrees with a plain filter over all bits", async () => {
  const [held] = rack.slice(-1);
  await shop.ask("POST", `/v1/bits/${held?.id}/hold`, { body: { reason: "It may be bent." } });
  const { data: all }: Page = (await search({})).body;
  expect(all.map(({ id }) => id)).toEqual(rack.map(({ id }) => id));
  await fc.assert(
    fc.asyncProperty(asked, async ({ homePlaceId, ...given }) => {
      const { toleranceMm = 0.4 } = given;
      const home = homePlaceId === "drawer" ? drawer.id : homePlaceId;
      const isNear = (mm: number, asked: number | undefined) =>
        asked === undefined || Math.abs(mm - asked) <= toleranceMm + 1e-9;
      const want = all.filter(
        (bit) =>
          (given.kind === undefined || bit.form.kind === given.kind) &&
          isNear(bit.form.diameterMm, given.diameterMm) &&
          isNear(bit.shankDiameterMm, given.shankDiameterMm) &&
          (given.state === undefined || bit.state === given.state) &&
          (given.mass === undefined || bit.massG === undefined) &&
          (home === undefined || bit.homePlaceId === home),
      );
      const query = Object.entries({ ...given, ...(home && { homePlaceId: home }) });
      const answer = await search(Object.fromEntries(query.map(([name, value]) => [name, String(value)])));
      expect(answer.body.data.map(({ id }: Bit) => id)).toEqual(want.map(({ id }) => id));
    }),
    { numRuns: 150 },
  );
  await made(shop, `/v1/bits/${held?.id}/inspections`, { findings: [], effect: "note" });
  await made(shop, `/v1/bits/${held?.id}/release`, { reason: "It is straight." });
});

test("pages together give everything once while bits are added, changed and removed", async () => {
  const seen: string[] = [];
  const late: string[] = [];
  let query: Record<string, string> = { limit: "2", q: "straight" };
  const before = (await search({ q: "straight" })).body.data.map(({ id }: Bit) => id);
  for (;;) {
    const { body }: { body: Page } = await shop.ask("GET", `/v1/bits?${new URLSearchParams(query)}`);
    seen.push(...body.data.map(({ id }) => id));
    if (body.nextCursor === null) break;
    const { id } = await addBit(shop, { ...STRAIGHT_BIT, name: "Late" });
    if (late.length < 3) late.push(id);
    else await shop.ask("DELETE", `/v1/bits/${id}`, { headers: { "If-Match": "*" } });
    await shop.ask("PATCH", `/v1/bits/${seen[0]}`, {
      body: { name: `Straight, changed ${late.length}` },
      headers: { "If-Match": "*" },
    });
    query = { ...query, cursor: body.nextCursor };
  }
  expect(seen).toEqual([...before, ...late]);
});

test("a bit is found by what it has become, and no longer by what it was", async () => {
  const bit = await addBit(shop, { name: "Walnut" });
  expect(await found({ q: "walnut" })).toEqual(["Walnut"]);
  await shop.ask("PATCH", `/v1/bits/${bit.id}`, { body: { name: "Larch" }, headers: { "If-Match": "*" } });
  expect([await found({ q: "walnut" }), await found({ q: "larch" })]).toEqual([[], ["Larch"]]);
  await shop.ask("POST", `/v1/bits/${bit.id}/hold`, { body: { reason: "It may be bent." } });
  expect(await found({ q: "larch", state: "held" })).toEqual(["Larch"]);
  expect(await found({ q: "larch", state: "in-rack" })).toEqual([]);
  await shop.ask("DELETE", `/v1/bits/${bit.id}`, { headers: { "If-Match": "*" } });
  expect(await found({ q: "larch" })).toEqual([]);
});
