import { sql } from "drizzle-orm";
import { expect, onTestFinished, test } from "vitest";
import { changeBit, createBit } from "../bits/decide.ts";
import type { PhotographRecord } from "../photographs/schema.ts";
import { createPlace } from "../places/decide.ts";
import { creation, removal } from "../store/changes.ts";
import { openStore } from "../store/open.ts";
import type { Change } from "../store/port.ts";

const AT = "2026-03-02T08:00:00.000Z";
const SHELF = createPlace("place_shelf", { name: "Shelf", kind: "drawer" }, AT);
const BIT = {
  name: "Straight",
  form: { kind: "straight", diameterMm: 12, cuttingLengthMm: 30 },
  shankDiameterMm: 12,
  wings: 2,
} as const;

/** A shop with a shelf and a bit that is not on it, and orders that are written in one transaction. */
async function openShop() {
  const store = openStore(":memory:");
  onTestFinished(store.close);
  const together = (...orders: readonly (readonly Change[])[]) =>
    Promise.all(
      orders.map(async (changes) => {
        const stamp = { by: "key_1", at: AT, requestId: "r-1" };
        return (await store.commit({ stamp, changes })).kind;
      }),
    );
  const bit = createBit("bit_1", BIT, AT);
  await together([SHELF.change, bit.change]);
  return { together, bit, database: store.database };
}

const putOnShelf = (bit: ReturnType<typeof createBit>) =>
  changeBit(bit.record, { homePlaceId: SHELF.record.id }, AT).change;

test("a bit put in a place keeps it from being removed by who saw it empty", async () => {
  const { together, bit } = await openShop();
  const outcomes = await together([putOnShelf(bit)], [removal("place", SHELF.record)]);
  expect(outcomes).toEqual(["committed", "moved"]);
});

test("a place put inside another keeps that one too", async () => {
  const { together } = await openShop();
  const inner = createPlace("place_inner", { name: "Box", kind: "drawer", insideId: SHELF.record.id }, AT);
  expect(await together([inner.change], [removal("place", SHELF.record)])).toEqual(["committed", "moved"]);
});

test("no bit is put in a place that was removed meanwhile, neither a new one nor one that is kept", async () => {
  const { together, bit } = await openShop();
  const fresh = createBit("bit_2", { ...BIT, homePlaceId: SHELF.record.id }, AT);
  const outcomes = await together([removal("place", SHELF.record)], [putOnShelf(bit)], [fresh.change]);
  expect(outcomes).toEqual(["committed", "moved", "moved"]);
});

test("a bit that has lost its place, as earlier versions let it, can still be changed", async () => {
  const { together, database } = await openShop();
  const lost = createBit("bit_2", { ...BIT, homePlaceId: SHELF.record.id }, AT);
  await together([lost.change]);
  database.run(sql`DELETE FROM places`);
  const renamed = changeBit(lost.record, { name: "Old straight" }, AT);
  expect(await together([renamed.change])).toEqual(["committed"]);
});

test("of photographs of one bit, those over the limit are not taken, whoever adds them at once", async () => {
  const { together, bit } = await openShop();
  const photograph = (number: number): PhotographRecord => ({
    id: `photograph_${number}`,
    bitId: bit.record.id,
    mediaType: "image/png",
    sha256: "0".repeat(64),
    bytes: Buffer.from("image"),
    createdAt: AT,
    updatedAt: AT,
    version: 1,
  });
  const orders = Array.from({ length: 14 }, (_, number) => [
    creation("photograph", photograph(number), { id: number }),
  ]);
  const outcomes = await together(...orders);
  expect(outcomes.filter((kind) => kind === "committed")).toHaveLength(12);
  expect(outcomes.slice(12)).toEqual(["moved", "moved"]);
});
