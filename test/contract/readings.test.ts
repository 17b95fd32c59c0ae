import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { addBit, addRouter, lastSequence, made, planFor } from "./crib.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

const START = "2026-03-02T08:00:00.000Z";
let now = new Date(START);
let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, () => now, afterAll);
});
beforeEach(() => {
  now = new Date(START);
});

type Kept = { id: string };

const DAY_MS = 86_400_000;
const daysLater = (days: number) => new Date(new Date(START).getTime() + days * DAY_MS);
const plateOnly = () =>
  addRouter(shop, { minRpm: 8000, maxRpm: 24_000, dial: { marks: { first: 1, last: 5 }, steps: 1 } });
const readDial = (router: Kept, mark: number | string, rpm: number, given: object = {}) =>
  shop.ask("POST", `/v1/routers/${router.id}/dial-readings`, {
    body: { mark, rpm, instrument: "Optical tachometer", ...given },
  });
const runOut = (bit: Kept, router: Kept, runOutMm: number, given: object = {}) =>
  shop.ask("POST", "/v1/run-out-readings", {
    body: { bitId: bit.id, routerId: router.id, runOutMm, instrument: "Dial indicator", ...given },
  });
const preview = async (bit: Kept, router: Kept) =>
  (await shop.ask("POST", "/v1/plans/preview", { body: planFor(bit, router) })).body;
/** The nominal speed that the service takes a mark for: what a trial entered at it is kept with. */
const speedAt = async (router: Kept, mark: number) =>
  (
    await made(shop, "/v1/speed-trials", {
      ...{ bitId: (await addBit(shop)).id, routerId: router.id, mark, outcome: "ran-free" },
    })
  ).rpm;
const unbalanceOf = ({ limits }: { limits: { name: string; rpm: number }[] }) =>
  limits.find(({ name }) => name === "unbalance")?.rpm ?? Number.NaN;

describe("a speed read at a mark", () => {
  test("beats the plate, and the marks between follow it", async () => {
    const [bit, router] = [await addBit(shop), await plateOnly()];
    // Straight from 8000 to 24000 over four steps.
    expect([await speedAt(router, 1), await speedAt(router, 2)]).toEqual([8000, 12_000]);
    expect((await preview(bit, router)).speed.dialMark).toBe(1);
    const { status, body } = await readDial(router, 2, 10_600);
    expect(status).toBe(201);
    expect(body).toMatchObject({ routerId: router.id, readAt: START, mark: 2, rpm: 10_600 });
    expect(await speedAt(router, 2)).toBe(10_600);
    const { speed } = await preview(bit, router);
    expect(speed).toMatchObject({ dialMark: 2, rpm: 10_600, basis: "reading" });
  });

  test("lapses when the policy says, and the plate counts again", async () => {
    const [bit, router] = [await addBit(shop), await plateOnly()];
    await readDial(router, 2, 10_600);
    now = daysLater(365);
    expect((await preview(bit, router)).speed.dialMark).toBe(2);
    now = new Date(daysLater(365).getTime() + 1);
    expect((await preview(bit, router)).speed.dialMark).toBe(1);
    const { body } = await shop.ask("GET", `/v1/dial-readings?routerId=${router.id}`);
    expect(body.data).toHaveLength(1);
  });

  test("that came with the router's own record lapses like any other", async () => {
    const bit = await addBit(shop);
    const router = await addRouter(shop, {
      ...{ minRpm: 8000, maxRpm: 24_000 },
      dial: { marks: { first: 1, last: 5 }, steps: 1, readings: [{ mark: 2, rpm: 10_600 }] },
    });
    expect((await preview(bit, router)).speed.dialMark).toBe(2);
    now = new Date(daysLater(365).getTime() + 1);
    expect((await preview(bit, router)).speed.dialMark).toBe(1);
  });

  test("that a newer one contradicts no longer counts, in whichever order they are entered", async () => {
    const router = await plateOnly();
    await readDial(router, 3, 15_000);
    // Mark 2 cannot be faster than mark 3: the newer one is believed.
    await readDial(router, 2, 15_500, { readAt: "2026-03-02T08:00:01Z" });
    expect(await speedAt(router, 2)).toBe(15_500);
    expect(await speedAt(router, 3)).toBeGreaterThan(15_500);
    await readDial(router, 3, 14_000, { readAt: "2026-03-02T07:59:59Z" });
    expect(await speedAt(router, 2)).toBe(15_500);
    expect(await speedAt(router, 3)).toBeGreaterThan(15_500);
  });

  test("of two at the same moment the one entered last is believed", async () => {
    const router = await plateOnly();
    await readDial(router, 2, 11_000);
    await readDial(router, 2, 11_400);
    expect(await speedAt(router, 2)).toBe(11_400);
    await readDial(router, 3, 11_200);
    expect(await speedAt(router, 3)).toBe(11_200);
    expect(await speedAt(router, 2)).toBeLessThan(11_200);
  });

  test("goes to the mark it was read at on a dial of letters, whatever their case", async () => {
    const router = await addRouter(shop, {
      ...{ minRpm: 8000, maxRpm: 24_000, dial: { marks: { first: "A", last: "E" } } },
    });
    expect((await readDial(router, "B", 10_600)).status).toBe(201);
    const bit = await addBit(shop);
    expect((await preview(bit, router)).speed).toMatchObject({ dialMark: "B", rpm: 10_600 });
    expect((await readDial(router, "F", 24_000)).status).toBe(422);
    expect((await readDial(router, 2, 24_000)).status).toBe(422);
  });

  test.each([
    ["a mark beyond the dial", 6, 20_000, {}, "/mark"],
    ["a mark that does not click", 2.5, 20_000, {}, "/mark"],
    ["a speed of nothing", 2, 0, {}, "/rpm"],
    ["a day still to come", 2, 11_000, { readAt: "2026-03-03T08:00:00Z" }, "/readAt"],
    ["no instrument", 2, 11_000, { instrument: " " }, "/instrument"],
  ])("is refused with %s", async (_name, mark, rpm, given, pointer) => {
    const router = await plateOnly();
    const before = await lastSequence(shop);
    const answer = await readDial(router, mark, rpm, given);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer }]);
    expect(await lastSequence(shop)).toBe(before);
  });

  test("is refused for a router without a dial", async () => {
    const { dial: _, ...plain } = await plateOnly();
    const router = await made(shop, "/v1/routers", { name: plain.name, minRpm: 20_000, maxRpm: 20_000 });
    expect((await readDial(router, 1, 20_000)).body.errors).toMatchObject([{ pointer: "/mark" }]);
    expect((await readDial({ id: "router_0" }, 1, 20_000)).status).toBe(404);
  });
});

describe("a run-out reading", () => {
  const { markedMaxRpm: _, ...UNMARKED } = PANEL_BIT;

  test("feeds the unbalance limit of that router alone: the limit goes with one over its root", async () => {
    const [bit, router, other] = [
      await made(shop, "/v1/bits", UNMARKED),
      await plateOnly(),
      await plateOnly(),
    ];
    await runOut(bit, router, 0.02);
    const fine = unbalanceOf(await preview(bit, router));
    now = daysLater(1);
    await runOut(bit, router, 0.08);
    const rough = unbalanceOf(await preview(bit, router));
    // F = m·e·ω²: four times the eccentricity, half the speed (first principles); both are whole rpm.
    expect(Math.abs(fine / rough - 2)).toBeLessThan(0.001);
    // 0.05 mm is what the default policy takes without a reading.
    expect(Math.abs(unbalanceOf(await preview(bit, other)) / rough - Math.sqrt(0.08 / 0.05))).toBeLessThan(
      0.001,
    );
  });

  test("beats the bit's own record, the latest reading counting, not the latest entry", async () => {
    const [bit, router] = [await made(shop, "/v1/bits", { ...UNMARKED, runOutMm: 0.02 }), await plateOnly()];
    const fine = unbalanceOf(await preview(bit, router));
    await runOut(bit, router, 0.08);
    const rough = unbalanceOf(await preview(bit, router));
    expect(rough).toBeLessThan(fine);
    await runOut(bit, router, 0.01, { readAt: "2026-03-01T08:00:00Z" });
    expect(unbalanceOf(await preview(bit, router))).toBe(rough);
  });

  test("that is good lapses when the policy says; age does not mend one that is bad", async () => {
    const [good, bad, router] = [
      await made(shop, "/v1/bits", UNMARKED),
      await made(shop, "/v1/bits", UNMARKED),
      await plateOnly(),
    ];
    const unread = unbalanceOf(await preview(good, router));
    await runOut(good, router, 0.01);
    await runOut(bad, router, 0.2);
    now = daysLater(365);
    const fresh = [unbalanceOf(await preview(good, router)), unbalanceOf(await preview(bad, router))];
    expect(fresh[0]).toBeGreaterThan(unread);
    now = new Date(daysLater(365).getTime() + 1);
    expect(unbalanceOf(await preview(good, router))).toBe(unread);
    expect(unbalanceOf(await preview(bad, router))).toBe(fresh[1]);
  });

  test.each([
    ["a bit nobody knows", { bitId: "bit_0" }, "/bitId"],
    ["a router nobody knows", { routerId: "router_0" }, "/routerId"],
    ["a collet nobody knows", { colletId: "collet_0" }, "/colletId"],
    ["less than none", { runOutMm: -0.01 }, "/runOutMm"],
  ])("of %s is refused", async (_name, given, pointer) => {
    const [bit, router] = [await addBit(shop), await plateOnly()];
    const answer = await runOut(bit, router, 0.02, given);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer }]);
  });

  test("in another router's collet is refused", async () => {
    const [bit, router, other] = [await addBit(shop), await plateOnly(), await plateOnly()];
    const collet = await made(shop, "/v1/collets", {
      ...{ name: "1/2 in", routerId: other.id, diameterMm: 12.7, condition: "good" },
    });
    const answer = await runOut(bit, router, 0.02, { colletId: collet.id });
    expect(answer.body.errors).toMatchObject([{ pointer: "/colletId" }]);
    expect((await runOut(bit, other, 0.02, { colletId: collet.id })).status).toBe(201);
  });
});
