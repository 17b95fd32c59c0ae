import type { Wood } from "../wood/wood.ts";

/**
 * Specific cutting force at the reference chip and density, N/mm². Source: particleboard, mean principal force 32.0 N/mm² in
 * peripheral up-milling (Materials 14:2208, 2021). Absolute values for solid wood are weakly published, so the
 * band is wide and a plan is judged at its upper edge.
 */
const REFERENCE_FORCE_N_PER_MM2 = 32;

/** Density of the board of that figure, kg/m³: a common particleboard. From memory. */
const REFERENCE_DENSITY_KG_PER_M3 = 680;

/** Mean chip taken for that figure, mm. Ours: the source's chip is not known. */
const REFERENCE_CHIP_MM = 0.1;

/** How fast the specific force falls as the chip thickens. Ours: shape only, thin chips cost more per volume. */
const CHIP_EXPONENT = 0.4;

/** End grain takes more than long grain. Ours: shape only. */
const END_GRAIN_FACTOR = 1.5;

/** A true value may be this much higher or lower than the model's. Ours. */
export const FORCE_BAND_FACTOR = 2;

/**
 * Specific cutting force in N/mm² at a mean chip in mm, above 0: k = 32·(ρ/680)·(h/0.1)^−0.4, times 1.5 in end grain. Rises with
 * density, falls with chip thickness. The middle of a band from half to twice as much. The 32 is published (Materials 14:2208,
 * 2021); the rest is ours.
 * @example
 * specificCuttingForceNPerMm2(woodById("particleboard"), 0.1, "long") // → 32
 */
export function specificCuttingForceNPerMm2(wood: Wood, chipMm: number, grain: "end" | "long"): number {
  const density = wood.densityKgPerM3.value / REFERENCE_DENSITY_KG_PER_M3;
  const chip = (chipMm / REFERENCE_CHIP_MM) ** -CHIP_EXPONENT;
  return (
    REFERENCE_FORCE_N_PER_MM2 * density * chip * (grain === "end" && wood.hasGrain ? END_GRAIN_FACTOR : 1)
  );
}

/**
 * Mean cutting power in W: P = k_c·A·v_f, from the specific force in N/mm², the section removed in mm² and the feed in m/min
 * (machining handbooks, standard).
 * @example
 * cuttingPowerW(32, 100, 3) // → 160
 */
export function cuttingPowerW(
  specificForceNPerMm2: number,
  removedAreaMm2: number,
  feedMPerMin: number,
): number {
  return (specificForceNPerMm2 * removedAreaMm2 * feedMPerMin * 1000) / 60_000;
}
