import { gyroscopicCoupleNm } from "../bit/rotation.ts";
import { type BitSolid, storedEnergyJ } from "../bit/solid.ts";
import type { Policy } from "../policy/policy.ts";

/** How the router is held in this cut. */
export type Mounting = "table" | "handheld";

/** What a bit is cleared for. A table is always allowed. */
export type MountingClearance = "handheld" | "handheld-with-care" | "table-only";

/** One measure of the bit against its two thresholds. */
export type MeasuredReason = {
  readonly code: "diameter" | "mass" | "stored-energy" | "gyroscopic-couple";
  readonly clearance: MountingClearance;
  readonly value: number;
  readonly handheldMax: number;
  readonly careMax: number;
};

/** What a clearance rests on: a measure, or that this form takes a table whatever it measures. */
export type MountingReason = MeasuredReason | { readonly code: "form"; readonly clearance: "table-only" };

export type MountingFinding = {
  readonly allowed: MountingClearance;
  /** The same by the measures alone, which say how large and heavy the bit is. */
  readonly bySize: MountingClearance;
  readonly reasons: readonly MountingReason[];
};

type MeasuredFinding = Omit<MountingFinding, "reasons"> & { readonly reasons: readonly MeasuredReason[] };

/** How fast hands tilt a router when it tips at a corner. Ours: about 60 degrees a second. */
const TILT_RAD_PER_S = 1;

const KINDEST_FIRST: readonly MountingClearance[] = ["handheld", "handheld-with-care", "table-only"];

/**
 * What the bit is cleared for, by diameter, mass, stored energy and how hard it resists being tilted: the strictest of them, because diameter
 * alone does not clear a heavy bit. `energyRpm` is the speed the trade's chart gives the diameter, so that
 * the energy compared never falls as a bit gets heavier.
 */
export function mountingFor(solid: BitSolid, energyRpm: number, policy: Policy): MeasuredFinding {
  // A bit that was never weighed may be heavier than its estimate: the heavier one is judged.
  const heavier = solid.massSource === "weighed" ? 1 : 1 + policy.massEstimateToleranceRatio;
  const energyJ = storedEnergyJ(solid.polarInertiaKgM2 * heavier, energyRpm);
  // The shank turns in the collet: it is held there, and only the head is tilted out of its plane by the hands.
  const coupleNm = gyroscopicCoupleNm(solid.headInertiaKgM2 * heavier, energyRpm, TILT_RAD_PER_S);
  const reasons = [
    reason("diameter", 2 * solid.rimRadiusMm, policy.handheldDiameterMaxMm, policy.handheldCareDiameterMaxMm),
    reason("mass", solid.massG * heavier, policy.handheldMassMaxG, policy.handheldCareMassMaxG),
    reason("stored-energy", energyJ, policy.handheldEnergyMaxJ, policy.handheldCareEnergyMaxJ),
    reason("gyroscopic-couple", coupleNm, policy.gyroscopicCoupleMaxNm, policy.gyroscopicCoupleCareMaxNm),
  ];
  const worst = Math.max(...reasons.map(({ clearance }) => KINDEST_FIRST.indexOf(clearance)));
  const bySize = KINDEST_FIRST[worst] ?? "table-only";
  return { allowed: bySize, bySize, reasons };
}

function reason(
  code: MeasuredReason["code"],
  value: number,
  handheldMax: number,
  careMax: number,
): MeasuredReason {
  // A course may tighten the outer threshold below the inner one; the outer one still shuts the door.
  const clearance = value > careMax ? "table-only" : value > handheldMax ? "handheld-with-care" : "handheld";
  return { code, clearance, value, handheldMax, careMax };
}
