import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { addBit, addRouter, lastSequence, made, planFor } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

const START = "2026-03-02T08:00:00.000Z";
let now = new Date(START);
let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, () => now, afterAll);
});
beforeEach(() => {
  now = new Date(START);
});

const MARK_2 = { mark: 2, rpm: 10_600 };
const textsOf = (assumptions: { code: string; text: string }[], wanted: string) =>
  assumptions.flatMap(({ code, text }) => (code === wanted ? [text] : []));

type Kept = { id: string };

const DAY_MS = 86_400_000;
const daysLater = (days: number) => new Date(new Date(START).getTime() + days * DAY_MS);
const plateOnly = () =>
  addRouter(shop, { minRpm: 8000, maxRpm: 24_000, dial: { marks: { first: 1, last: 5 }, steps: 1 } });
const readDial = (router: Kept, mark: number | string, rpm: number, given: object = {}) =>
  shop.ask("POST", `/v1/routers/${router.id}/dial-readings`, {
    body: { mark, rpm, instrument: "Optical tachometer", ...given },
  });
/** A reading far from the plate's line counts when a second one agrees. */
const readTwice = async (router: Kept, mark: number | string, rpm: number, given: object = {}) => {
  const first = await readDial(router, mark, rpm, { isConfirmed: true, ...given });
  expect(first.status, first.text).toBe(201);
  return readDial(router, mark, rpm, given);
};
const preview = async (bit: Kept, router: Kept) =>
  (await shop.ask("POST", "/v1/plans/preview", { body: planFor(bit, router) })).body;
/** The nominal speed that the service takes a mark for: what a trial entered at it is kept with. */
const speedAt = async (router: Kept, mark: number) =>
  (
    await made(shop, "/v1/speed-trials", {
      ...{ bitId: (await addBit(shop)).id, routerId: router.id, mark, outcome: "ran-free" },
    })
  ).rpm;

describe("a speed read at a mark", () => {
  test("beats the plate, and the marks between follow it", async () => {
    const [bit, router] = [await addBit(shop), await plateOnly()];
    // Straight from 8000 to 24000 over four steps.
    expect([await speedAt(router, 1), await speedAt(router, 2)]).toEqual([8000, 12_000]);
    expect((await preview(bit, router)).speed.mark).toBe(1);
    const { status, body } = await readTwice(router, 2, 10_600);
    expect(status).toBe(201);
    expect(body).toMatchObject({ routerId: router.id, readAt: START, mark: 2, rpm: 10_600 });
    expect(await speedAt(router, 2)).toBe(10_600);
    const { speed } = await preview(bit, router);
    expect(speed).toMatchObject({ mark: 2, rpm: 10_600, basis: "reading" });
  });

  test("lapses when the policy says, and the plate counts again", async () => {
    const [bit, router] = [await addBit(shop), await plateOnly()];
    await readTwice(router, 2, 10_600);
    now = daysLater(365);
    expect((await preview(bit, router)).speed.mark).toBe(2);
    now = new Date(daysLater(365).getTime() + 1);
    const { speed, assumptions } = await preview(bit, router);
    expect(speed.mark).toBe(1);
    expect(textsOf(assumptions, "reading-left-out")).toEqual([
      "The reading of 10,600 rpm at mark 2 is not used: it is too old to be relied on. Read the mark again.",
    ]);
    const { body } = await shop.ask("GET", `/v1/dial-readings?routerId=${router.id}`);
    expect(body.data).toHaveLength(2);
  });

  test("that came with the router's own record lapses like any other", async () => {
    const bit = await addBit(shop);
    const router = await addRouter(shop, {
      ...{ minRpm: 8000, maxRpm: 24_000 },
      dial: { marks: { first: 1, last: 5 }, steps: 1, readings: [MARK_2, MARK_2] },
    });
    expect((await preview(bit, router)).speed.mark).toBe(2);
    now = new Date(daysLater(365).getTime() + 1);
    expect((await preview(bit, router)).speed.mark).toBe(1);
  });

  test("that newer ones contradict is left out and named, in whichever order they are entered", async () => {
    const router = await plateOnly();
    await readDial(router, 3, 15_000);
    // Mark 2 cannot be faster than mark 3: what was read twice since then is believed.
    await readTwice(router, 2, 15_500, { readAt: "2026-03-02T08:00:00Z" });
    expect(await speedAt(router, 2)).toBe(15_500);
    expect(await speedAt(router, 3)).toBeGreaterThan(15_500);
    await readDial(router, 3, 14_400, { readAt: "2026-03-02T07:59:59Z", isConfirmed: true });
    expect(await speedAt(router, 2)).toBe(15_500);
    expect(await speedAt(router, 3)).toBeGreaterThan(15_500);
    const { assumptions } = await preview(await addBit(shop), router);
    expect(textsOf(assumptions, "reading-left-out")).toEqual([
      "The reading of 15,000 rpm at mark 3 is not used: a later reading contradicts it.",
    ]);
  });

  test("of two of a mark that differ the newer one must be confirmed, and the faster counts until one agrees", async () => {
    const router = await plateOnly();
    await readDial(router, 2, 11_400);
    const slower = await readDial(router, 2, 11_000);
    expect(slower.body.errors).toMatchObject([
      { pointer: "/rpm", accepted: "about 11400, or the same reading with isConfirmed: true" },
    ]);
    await readDial(router, 2, 11_000, { isConfirmed: true });
    expect(await speedAt(router, 2)).toBe(11_400);
    expect((await readDial(router, 2, 11_050)).status).toBe(201);
    expect(await speedAt(router, 2)).toBe(11_050);
    await readDial(router, 2, 11_600, { isConfirmed: true });
    expect(await speedAt(router, 2)).toBe(11_600);
  });

  test("goes to the mark it was read at on a dial of letters, whatever their case", async () => {
    const router = await addRouter(shop, {
      ...{ minRpm: 8000, maxRpm: 24_000, dial: { marks: { first: "A", last: "E" } } },
    });
    expect((await readTwice(router, "B", 10_600)).status).toBe(201);
    const bit = await addBit(shop);
    expect((await preview(bit, router)).speed).toMatchObject({ mark: "B", rpm: 10_600 });
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

  // A router of 23,000 to 30,000 rpm is too fast for a bit of 88.9 mm at any mark: 107 m/s at the rim (π·D·n).
  describe("that was mistyped", () => {
    const FAST = { minRpm: 23_000, maxRpm: 30_000, dial: { marks: { first: 1, last: 5 } } };

    test("is refused, says what the router does, and changes nothing", async () => {
      const router = await addRouter(shop, FAST);
      const before = await lastSequence(shop);
      const { status, body } = await readDial(router, 1, 1100);
      expect(status).toBe(422);
      expect(body.errors).toEqual([
        {
          in: "body",
          pointer: "/rpm",
          message: "This router does not run at 1,100 rpm. Read it again, and look at its plate.",
          accepted: "20700 to 33000, or the same reading with isConfirmed: true",
        },
      ]);
      expect(await lastSequence(shop)).toBe(before);
    });

    test("and confirmed is kept and shown, and makes no plan of what must not be run", async () => {
      const [bit, router] = [await addBit(shop), await addRouter(shop, FAST)];
      const { body } = await readDial(router, 1, 1100, { isConfirmed: true });
      expect(body).toMatchObject({ rpm: 1100, isConfirmed: true });
      const { verdict, assumptions } = await preview(bit, router);
      expect(verdict).toBe("do-not-run");
      expect(textsOf(assumptions, "reading-doubted")).toEqual([
        "The reading of 1,100 rpm at mark 1 is far from what the router's range and other readings give. Until a second reading agrees, the faster counts: 23,000 rpm.",
      ]);
    });

    test("in a request is refused there, and confirmed there makes no plan either", async () => {
      const bit = await addBit(shop);
      const ask = (reading: object) => {
        const router = { ...FAST, dial: { ...FAST.dial, readings: [reading] } };
        return shop.ask("POST", "/v1/plans/preview", { body: { ...planFor(bit, bit), router } });
      };
      const { status, body } = await ask({ mark: 1, rpm: 1100 });
      expect(status).toBe(422);
      expect(body.errors).toMatchObject([{ pointer: "/router/dial/readings/0/rpm" }]);
      const confirmed = await ask({ mark: 1, rpm: 1100, isConfirmed: true });
      expect(confirmed.body.verdict).toBe("do-not-run");
    });

    test("for a plate that was changed since is doubted, not refused", async () => {
      const [bit, router] = [await addBit(shop), await plateOnly()];
      await readDial(router, 1, 8000);
      const { version } = (await shop.ask("GET", `/v1/routers/${router.id}`)).body;
      const headers = { "If-Match": `"${version}"` };
      const { dial } = FAST;
      const change = { minRpm: 23_000, maxRpm: 30_000, dial };
      expect((await shop.ask("PATCH", `/v1/routers/${router.id}`, { body: change, headers })).status).toBe(
        200,
      );
      const { verdict, assumptions } = await preview(bit, router);
      expect(verdict).toBe("do-not-run");
      expect(textsOf(assumptions, "reading-doubted")).toHaveLength(1);
    });
  });

  test("is refused for a router without a dial", async () => {
    const { dial: _, ...plain } = await plateOnly();
    const router = await made(shop, "/v1/routers", { name: plain.name, minRpm: 20_000, maxRpm: 20_000 });
    expect((await readDial(router, 1, 20_000)).body.errors).toMatchObject([{ pointer: "/mark" }]);
    expect((await readDial({ id: "router_0" }, 1, 20_000)).status).toBe(404);
  });
});
