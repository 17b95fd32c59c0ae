import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { addBit, addSomebody, made } from "./crib.ts";
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

type Bit = { id: string };

const inspect = (bit: Bit, body: object) => shop.ask("POST", `/v1/bits/${bit.id}/inspections`, { body });
const act = (bit: Bit, what: string, reason = "Looked at by the bench lead.") =>
  shop.ask("POST", `/v1/bits/${bit.id}/${what}`, { body: { reason } });

describe("a bit in doubt", () => {
  test("can be held by anybody, and the first reason stands until somebody in charge says another", async () => {
    const bit = await addBit(shop, { cost: { amount: 80, currency: "EUR" } });
    const { key } = await addSomebody(shop, "student");
    const hold = (reason: string, by = shop.managerKey) =>
      shop.ask("POST", `/v1/bits/${bit.id}/hold`, { body: { reason }, key: by });
    const { status, body } = await hold("It fell on the floor.", key);
    expect(status).toBe(200);
    expect(Object.keys(body).sort()).toEqual(["hold", "id", "name", "state", "version"]);
    expect(body).toMatchObject({ state: "held", hold: { reason: "It fell on the floor." } });
    expect((await hold("And a tooth looks odd.", key)).body.hold.reason).toBe("It fell on the floor.");
    expect((await hold("A tooth is chipped.")).body.hold.reason).toBe("A tooth is chipped.");
    expect((await shop.ask("GET", `/v1/bits/${bit.id}`, { key })).status).toBe(403);
    const release = { body: { reason: "It looks fine." }, key };
    expect((await shop.ask("POST", `/v1/bits/${bit.id}/release`, release)).status).toBe(403);
  });

  test("is released after an inspection made since it was held, and not because it looks fine", async () => {
    const bit = await addBit(shop);
    await inspect(bit, { findings: [], effect: "note" });
    now = new Date("2026-03-03T08:00:00Z");
    await act(bit, "hold", "It fell on the floor.");
    const early = await act(bit, "release", "It looks fine.");
    expect([early.status, early.body.code]).toEqual([409, "inspection-needed"]);
    await inspect(bit, { findings: [], effect: "note", inspectedAt: "2026-03-02T09:00:00Z" });
    expect((await act(bit, "release")).body.code, "one of before the fall").toBe("inspection-needed");
    await inspect(bit, { findings: ["chipped-tooth"], effect: "hold" });
    expect((await act(bit, "release")).body.code, "one that found it unfit").toBe("inspection-needed");
    await inspect(bit, { findings: [], effect: "note" });
    expect((await act(bit, "release")).body.state).toBe("in-rack");
  });

  test.each(["cracked-braze", "bent"])(
    "with a %s is released when it was repaired, not before",
    async (finding) => {
      const bit = await addBit(shop);
      await inspect(bit, { findings: [finding], effect: "hold" });
      await inspect(bit, { findings: [], effect: "note" });
      const early = await act(bit, "release");
      expect([early.status, early.body.code]).toEqual([409, "repair-needed"]);
      expect(early.body.detail).toMatch(/retire the bit/);
      now = new Date("2026-03-03T08:00:00Z");
      await made(shop, `/v1/bits/${bit.id}/sharpenings`, {});
      expect((await act(bit, "release")).body.code, "a sharpening alone mends nothing").toBe("repair-needed");
      const { repaired } = await made(shop, `/v1/bits/${bit.id}/sharpenings`, { repaired: [finding] });
      expect(repaired).toEqual([finding]);
      await inspect(bit, { findings: [], effect: "note" });
      expect((await act(bit, "release")).body.state).toBe("in-rack");
    },
  );
});
