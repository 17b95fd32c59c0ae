import type { Bit } from "../bit/bit.ts";
import { formSummary } from "../bit/form/registry.ts";
import { type BitSolid, bitSolid } from "../bit/solid.ts";
import { chartRpm } from "../limit/diameter-chart.ts";
import type { Policy } from "../policy/policy.ts";
import { type MountingClearance, type MountingFinding, mountingFor } from "../router/mounting.ts";

/**
 * What a bit is cleared for: handheld, handheld with care, or table only. For a bit that `bitFaults` found nothing wrong with.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * clearanceOf(bit, DEFAULT_POLICY) // → "handheld"
 */
export function clearanceOf(bit: Bit, policy: Policy): MountingClearance {
  return mountingOf(bit, bitSolid(bit), policy).allowed;
}

/** The same with every reason, its energy judged at the speed the trade's chart gives the diameter. */
export function mountingOf({ form }: Bit, solid: BitSolid, policy: Policy): MountingFinding {
  const measured = mountingFor(solid, chartRpm(2 * solid.rimRadiusMm), policy);
  if (formSummary(form.kind).isForTableOnly !== true) return measured;
  const reasons = [{ code: "form", clearance: "table-only" } as const, ...measured.reasons];
  return { ...measured, allowed: "table-only", reasons };
}
