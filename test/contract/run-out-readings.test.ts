import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { addBit, addRouter, made, planFor } from "./crib.ts";
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
const runOut = (bit: Kept, router: Kept, runOutMm: number, given: object = {}) =>
  shop.ask("POST", "/v1/run-out-readings", {
    body: { bitId: bit.id, routerId: router.id, runOutMm, instrument: "Dial indicator", ...given },
  });
const preview = async (bit: Kept, router: Kept) =>
  (await shop.ask("POST", "/v1/plans/preview", { body: planFor(bit, router) })).body;
const unbalanceOf = ({ limits }: { limits: { name: string; rpm: number }[] }) =>
  limits.find(({ name }) => name === "unbalance")?.rpm ?? Number.NaN;

describe("a run-out reading", () => {
  const { markedMaxRpm: _, ...UNMARKED } = PANEL_BIT;

  test("feeds the unbalance limit of that router alone: the limit falls as a swinging mass says", async () => {
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
    // 0.05 mm is what the default policy takes without a reading.
    const unread = unbalanceOf(await preview(bit, other));
    expect([rough < unread, unread < fine]).toEqual([true, true]);
    // F = m·e·ω²/(1 − (n/n_critical)²): 1/n² rises in a straight line with the eccentricity (Jeffcott rotor, standard). All are whole rpm.
    const slope = (slowerRpm: number, fasterRpm: number) => 1 / slowerRpm ** 2 - 1 / fasterRpm ** 2;
    const ratio = slope(rough, unread) / slope(unread, fine);
    expect(Math.abs(ratio / ((0.08 - 0.05) / (0.05 - 0.02)) - 1)).toBeLessThan(0.002);
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
