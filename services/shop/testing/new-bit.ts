import { createBit } from "../src/bits/decide.ts";
import { policyInForce } from "../src/policy/in-force.ts";

/** When the tests of the store write. */
export const STAMP = { by: "key_1", at: "2026-03-02T08:00:00.000Z", requestId: "r-1" };

/** A straight bit and the change that creates it. */
export function newBit(id: string) {
  const bit = {
    name: id,
    form: { kind: "straight", diameterMm: 12, cuttingLengthMm: 30 },
    shankDiameterMm: 12,
    wings: 2,
  } as const;
  return createBit(id, bit, STAMP.at, policyInForce({}));
}
