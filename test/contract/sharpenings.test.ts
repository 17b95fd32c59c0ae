import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { addBit, addPlace, addRouter, lastSequence, made, planFor, STRAIGHT_BIT } from "./crib.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

const START = "2026-03-02T08:00:00.000Z";
let now = new Date(START);
let shop: Shop;
let router: { id: string };

beforeAll(async () => {
  shop = await openShop({}, () => now, afterAll);
  router = await addRouter(shop);
});
beforeEach(() => {
  now = new Date(START);
});

type Bit = { id: string };

const read = async (bit: Bit) => (await shop.ask("GET", `/v1/bits/${bit.id}`)).body;
const sharpen = (bit: Bit, body: object) => shop.ask("POST", `/v1/bits/${bit.id}/sharpenings`, { body });
const edge = async (bit: Bit) => (await shop.ask("GET", `/v1/bits/${bit.id}/edge`)).body;
const preview = async (bit: Bit) =>
  (await shop.ask("POST", "/v1/plans/preview", { body: planFor(bit, router) })).body;
const use = (bit: Bit, woodId: string, metres: number, doneAt?: string) =>
  made(shop, "/v1/uses", {
    ...{ bitId: bit.id, routerId: router.id, woodId, metres, minutes: 1, outcomes: ["fine"] },
    ...(doneAt !== undefined && { doneAt }),
  });

describe("a sharpening", () => {
  test("gives the bit its new dimensions for every plan from then on, and keeps the old ones", async () => {
    const bit = await addBit(shop);
    const before = await preview(bit);
    const { status, body } = await sharpen(bit, {
      diameterMm: 88.4,
      massG: 336,
      notes: "By the usual place.",
    });
    expect(status).toBe(201);
    expect(body).toMatchObject({
      bitId: bit.id,
      sharpenedAt: START,
      before: { form: PANEL_BIT.form, massG: 340 },
      after: { form: { ...PANEL_BIT.form, diameterMm: 88.4 }, massG: 336 },
    });
    expect(await read(bit)).toMatchObject({ form: body.after.form, massG: 336, sharpenedAt: START });
    const after = await preview(bit);
    expect(after.digest).not.toBe(before.digest);
    const same = await addBit(shop, { form: body.after.form, massG: 336 });
    expect(after.digest).toBe((await preview(same)).digest);
    const { body: events } = await shop.ask("GET", "/v1/events?limit=200");
    const sharpened = events.data.filter(
      ({ type, subjectId }: { type: string; subjectId: string }) =>
        type === "bit.sharpened" && subjectId === bit.id,
    );
    expect(sharpened).toMatchObject([{ data: { before: { form: PANEL_BIT.form, massG: 340 } } }]);
    const { body: history } = await shop.ask("GET", `/v1/sharpenings?bitId=${bit.id}`);
    expect(history.data).toEqual([body]);
  });

  test("brings a bit that was sent away back to its place", async () => {
    const place = await addPlace(shop, "Rack");
    const bit = await addBit(shop, { homePlaceId: place.id });
    await shop.ask("POST", `/v1/bits/${bit.id}/send-to-sharpening`);
    const away = await read(bit);
    expect(away).toMatchObject({ state: "at-sharpening", sentToSharpeningAt: START });
    expect(away.placeId).toBeUndefined();
    expect((await shop.ask("POST", `/v1/bits/${bit.id}/send-to-sharpening`)).body.code).toBe("invalid-state");
    await sharpen(bit, {});
    expect(await read(bit)).toMatchObject({ state: "in-rack", placeId: place.id });
  });

  test("below the smallest usable diameter takes the bit out of use, at it does not", async () => {
    const bit = await addBit(shop, { ...STRAIGHT_BIT, smallestUsableDiameterMm: 12 });
    await sharpen(bit, { diameterMm: 12 });
    expect((await read(bit)).state).toBe("in-rack");
    expect((await edge(bit)).sharpeningsLeft).toBe(0);
    await sharpen(bit, { diameterMm: 11.9 });
    expect(await read(bit)).toMatchObject({ state: "held", hold: { cause: "sharpening" } });
    expect((await preview(bit)).code).toBe("bit-not-usable");
  });

  test("is not needed to take a bit out of use that is entered, or said to be, smaller than it may be", async () => {
    const entered = await addBit(shop, { ...STRAIGHT_BIT, smallestUsableDiameterMm: 13 });
    expect(entered).toMatchObject({ state: "held", hold: { cause: "size" } });
    const bit = await addBit(shop, { ...STRAIGHT_BIT, smallestUsableDiameterMm: 12.7 });
    expect(bit.state).toBe("in-rack");
    const change = (body: object) =>
      shop.ask("PATCH", `/v1/bits/${bit.id}`, { body, headers: { "If-Match": "*" } });
    const { body: held } = await change({ smallestUsableDiameterMm: 12.8 });
    expect(held).toMatchObject({ state: "held", hold: { reason: expect.stringContaining("12.8 mm") } });
    expect((await preview(bit)).code).toBe("bit-not-usable");
    await made(shop, `/v1/bits/${bit.id}/inspections`, { findings: [], effect: "note" });
    await shop.ask("POST", `/v1/bits/${bit.id}/release`, { body: { reason: "Somebody looked at it." } });
    // Who released it has seen it: a remark does not hold it again.
    expect((await change({ notes: "For the lathe only." })).body.state).toBe("in-rack");
  });

  test("does not release a bit that was held for something else", async () => {
    const bit = await addBit(shop);
    await shop.ask("POST", `/v1/bits/${bit.id}/inspections`, {
      body: { findings: ["cracked-braze"], effect: "hold" },
    });
    await shop.ask("POST", `/v1/bits/${bit.id}/send-to-sharpening`);
    await sharpen(bit, { diameterMm: 88.5 });
    expect(await read(bit)).toMatchObject({ state: "held", hold: { reason: "Found: cracked-braze." } });
  });

  test.each([
    ["a bit that grew", { diameterMm: 90 }, "/diameterMm"],
    ["a bit that got heavier", { massG: 350 }, "/massG"],
    ["another form", { form: { kind: "straight", diameterMm: 12, cuttingLengthMm: 20 } }, "/form/kind"],
    ["a diameter under its own pilot", { diameterMm: 30 }, "/diameterMm"],
    ["a diameter of nothing", { diameterMm: 0 }, "/diameterMm"],
    ["a day still to come", { sharpenedAt: "2026-03-03T08:00:00Z" }, "/sharpenedAt"],
  ])("with %s is refused and changes nothing", async (_name, body, pointer) => {
    const bit = await addBit(shop, { form: { ...PANEL_BIT.form, pilotDiameterMm: 32 } });
    const before = await lastSequence(shop);
    const answer = await sharpen(bit, body);
    expect(answer.status, answer.text).toBe(422);
    expect(answer.body.errors.map((each: { pointer: string }) => each.pointer)).toContain(pointer);
    expect(await lastSequence(shop)).toBe(before);
  });

  test("of a retired bit is refused", async () => {
    const bit = await addBit(shop);
    await shop.ask("POST", `/v1/bits/${bit.id}/retire`, { body: { reason: "Worn out." } });
    expect((await sharpen(bit, {})).body.code).toBe("bit-not-usable");
    expect((await shop.ask("POST", `/v1/bits/${bit.id}/send-to-sharpening`)).body.code).toBe(
      "bit-not-usable",
    );
  });
});

describe("what is left of an edge", () => {
  test("goes by what it cut, an abrasive board more than solid wood (common practice)", async () => {
    const bits = await Promise.all([1, 2].map(() => addBit(shop, { toothMaterial: "carbide-tipped" })));
    const [inWood, inBoard] = bits;
    if (inWood === undefined || inBoard === undefined) throw new Error("two bits");
    await use(inWood, "black-cherry", 100);
    await use(inBoard, "mdf", 100);
    const [wood, board] = [await edge(inWood), await edge(inBoard)];
    expect(wood).toMatchObject({ basis: "estimate", isDue: false, sharpeningsLeft: null });
    expect(board.usedPercent).toBeGreaterThan(2 * wood.usedPercent);
    // The domain's own wear factor of MDF is 2.5, so that 260 m are over 80 % of 800 m.
    await use(inBoard, "mdf", 160);
    expect(await edge(inBoard)).toMatchObject({ usedEquivalentM: 650, expectedM: 800, isDue: true });
  });

  test("is whole again after a sharpening, and its own history replaces the estimate", async () => {
    const bit = await addBit(shop, { toothMaterial: "carbide-tipped", smallestUsableDiameterMm: 80 });
    await use(bit, "mdf", 120);
    now = new Date("2026-03-03T08:00:00Z");
    const { body } = await sharpen(bit, { diameterMm: 88.4 });
    expect(body.lifeEquivalentM).toBe(300);
    // (88.4 − 80) / 0.5 a sharpening, by its own one loss.
    expect(await edge(bit)).toMatchObject({
      ...{ usedEquivalentM: 0, usedPercent: 0, basis: "own-history", expectedM: 300, sharpeningsLeft: 16 },
    });
  });

  test("counts what was cut after a sharpening that is entered late, once", async () => {
    const bit = await addBit(shop, { toothMaterial: "carbide-tipped" });
    await use(bit, "mdf", 100, "2026-02-01T08:00:00Z");
    await use(bit, "mdf", 20, "2026-02-20T08:00:00Z");
    const { body } = await sharpen(bit, { sharpenedAt: "2026-02-10T08:00:00Z" });
    expect(body.lifeEquivalentM).toBe(250);
    expect(await edge(bit)).toMatchObject({ usedEquivalentM: 50 });
    expect((await read(bit)).used.equivalentMetresSinceSharpening).toBe(50);
    // A use that is entered late wore the edge before.
    await use(bit, "mdf", 40, "2026-02-05T08:00:00Z");
    expect((await read(bit)).used.equivalentMetresSinceSharpening).toBe(50);
    expect(await edge(bit)).toMatchObject({ usedEquivalentM: 50 });
  });
});
