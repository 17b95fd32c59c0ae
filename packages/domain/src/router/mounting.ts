import { gyroscopicCoupleNm } from "../bit/rotation.ts";
import { type BitSolid, storedEnergyJ } from "../bit/solid.ts";
import type { Policy } from "../policy/policy.ts";

/** How the router is held in this cut. */
export type Mounting = "table" | "handheld";

/** What a bit is cleared for. A table is always allowed. */
export type MountingClearance = "handheld" | "handheld-with-care" | "table-only";

/** One measure of the bit against its two thresholds. */
export type MountingReason = {
  readonly code: "diameter" | "mass" | "stored-energy" | "gyroscopic-couple";
  readonly clearance: MountingClearance;
  readonly value: number;
  readonly handheldMax: number;
  readonly careMax: number;
};

export type MountingFinding = {
  readonly allowed: MountingClearance;
  readonly reasons: readonly MountingReason[];
};

/** How fast hands tilt a router when it tips at a corner. Ours: about 60 degrees a second. */
const TILT_RAD_PER_S = 1;

const KINDEST_FIRST: readonly MountingClearance[] = ["handheld", "handheld-with-care", "table-only"];

/**
 * What the bit is cleared for, by diameter, mass, stored energy and how hard it resists being tilted: the strictest of them, because diameter
 * alone does not clear a heavy bit. `energyRpm` is the speed the trade's chart gives the diameter, so that
 * the energy compared never falls as a bit gets heavier.
 */
export function mountingFor(solid: BitSolid, energyRpm: number, policy: Policy): MountingFinding {
  // A bit that was never weighed may be heavier than its estimate: the heavier one is judged.
  const heavier = solid.massSource === "weighed" ? 1 : 1 + policy.massEstimateToleranceRatio;
  const energyJ = storedEnergyJ(solid.polarInertiaKgM2 * heavier, energyRpm);
  const coupleNm = gyroscopicCoupleNm(solid.polarInertiaKgM2 * heavier, energyRpm, TILT_RAD_PER_S);
  const reasons = [
    reason("diameter", 2 * solid.rimRadiusMm, policy.handheldDiameterMaxMm, policy.handheldCareDiameterMaxMm),
    reason("mass", solid.massG * heavier, policy.handheldMassMaxG, policy.handheldCareMassMaxG),
    reason("stored-energy", energyJ, policy.handheldEnergyMaxJ, policy.handheldCareEnergyMaxJ),
    reason("gyroscopic-couple", coupleNm, policy.gyroscopicCoupleMaxNm, policy.gyroscopicCoupleCareMaxNm),
  ];
  const strictest = Math.max(...reasons.map(({ clearance }) => KINDEST_FIRST.indexOf(clearance)));
  return { allowed: KINDEST_FIRST[strictest] ?? "table-only", reasons };
}

function reason(
  code: MountingReason["code"],
  value: number,
  handheldMax: number,
  careMax: number,
): MountingReason {
  // A course may tighten the outer threshold below the inner one; the outer one still shuts the door.
  const clearance = value > careMax ? "table-only" : value > handheldMax ? "handheld-with-care" : "handheld";
  return { code, clearance, value, handheldMax, careMax };
}
