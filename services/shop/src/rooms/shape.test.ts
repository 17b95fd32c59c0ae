import { expect, test } from "vitest";
import { behindTheService } from "../../testing/behind-the-service.ts";
import { openOwnStore } from "../../testing/own-store.ts";
import { changeBit, createBit } from "../bits/decide.ts";
import { photographKind } from "../photographs/kind.ts";
import { createPlace } from "../places/decide.ts";
import { placeKind } from "../places/kind.ts";
import { policyInForce } from "../policy/in-force.ts";
import { creation, newRecord, removal } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import { KINDS } from "./kinds.ts";
import { touchedBy } from "./touched.ts";

/** As long as the domain has it. */
const POLICY = policyInForce({});

const AT = "2026-03-02T08:00:00.000Z";
const SHELF = createPlace("place_shelf", { name: "Shelf", kind: "drawer" }, AT);
const BIT = {
  name: "Straight",
  form: { kind: "straight", diameterMm: 12, cuttingLengthMm: 30 },
  shankDiameterMm: 12,
  wings: 2,
} as const;

/** A shop with a shelf and a bit that is not on it, and batches that are written in one transaction. */
async function openShop() {
  const { store, file } = await openOwnStore();
  const together = (...batches: readonly (readonly Change[])[]) =>
    Promise.all(
      batches.map(async (changes) => {
        const stamp = { by: "key_1", at: AT, requestId: "r-1" };
        return (await store.commit({ stamp, changes })).kind;
      }),
    );
  const bit = createBit("bit_1", BIT, AT, POLICY);
  await together([...SHELF.changes, ...bit.changes]);
  return { together, bit, file };
}

const putOnShelf = (bit: ReturnType<typeof createBit>) =>
  changeBit(bit.record, { homePlaceId: SHELF.record.id }, AT, POLICY).changes;

test("a bit put in a place keeps it from being removed by who saw it empty", async () => {
  const { together, bit } = await openShop();
  const results = await together(putOnShelf(bit), [removal(placeKind, SHELF.record)]);
  expect(results).toEqual(["committed", "conflict"]);
});

test("a place put inside another keeps that one too", async () => {
  const { together } = await openShop();
  const inner = createPlace("place_inner", { name: "Box", kind: "drawer", insideId: SHELF.record.id }, AT);
  expect(await together([...inner.changes], [removal(placeKind, SHELF.record)])).toEqual([
    "committed",
    "conflict",
  ]);
});

test("no bit is put in a place that was removed meanwhile, neither a new one nor one that is kept", async () => {
  const { together, bit } = await openShop();
  const fresh = createBit("bit_2", { ...BIT, homePlaceId: SHELF.record.id }, AT, POLICY);
  const results = await together([removal(placeKind, SHELF.record)], putOnShelf(bit), [...fresh.changes]);
  expect(results).toEqual(["committed", "conflict", "conflict"]);
});

test("a bit that has lost its place, as earlier versions let it, can still be changed", async () => {
  const { together, file } = await openShop();
  const lost = createBit("bit_2", { ...BIT, homePlaceId: SHELF.record.id }, AT, POLICY);
  await together([...lost.changes]);
  await behindTheService({ file }, ({ run }) => run("DELETE FROM places"));
  const renamed = changeBit(lost.record, { name: "Old straight" }, AT, POLICY);
  expect(await together([...renamed.changes])).toEqual(["committed"]);
});

test("of photographs of one bit, those over the limit are not taken, whoever adds them at once", async () => {
  const { together, bit } = await openShop();
  const photograph = (number: number) => {
    const fields = { mediaType: "image/png", sha256: "0".repeat(64), bytes: Buffer.from("image") } as const;
    return newRecord(`photograph_${number}`, { ...fields, bitId: bit.record.id }, AT);
  };
  const batches = Array.from({ length: 14 }, (_, number) => [
    creation(photographKind, photograph(number), { id: number }),
  ]);
  const results = await together(...batches);
  expect(results.filter((kind) => kind === "committed")).toHaveLength(12);
  expect(results.slice(12)).toEqual(["conflict", "conflict"]);
});

test("every kind of record has its own type, table and prefix of ids", () => {
  for (const unique of [
    KINDS.map(({ type }) => type),
    KINDS.map(({ tableName }) => tableName),
    KINDS.map(({ idPrefix }) => idPrefix),
  ]) {
    expect(new Set<string>(unique).size).toBe(KINDS.length);
  }
});

test("a kind of record that nobody knows is taken to touch every approval", () => {
  const [bitKind] = KINDS;
  const unknown = { ...bitKind, type: "unheard-of" };
  expect(touchedBy({ ...removal(bitKind, createBit("bit_1", BIT, AT, POLICY).record), kind: unknown })).toBe(
    "all",
  );
});
