import { roundTo } from "../../quantity/round.ts";
import { N_PER_POUND_FORCE } from "../../quantity/units.ts";
import type { GrainDirection, Provenance, Sourced, Species } from "../wood.ts";

/** One row of the species tables, in the units they are printed in. */
export type SpeciesRow = Pick<Species, "id" | "name" | "botanicalName" | "note" | "shrinkagePercent"> & {
  /** On oven-dry mass and the volume at 12 % moisture content, or on the green volume (basic). */
  readonly specificGravity: { readonly at12Percent: Sourced } | { readonly basic: Sourced };
  readonly sideHardnessLbf: Sourced;
  readonly changeCoefficient: Readonly<Record<GrainDirection, Sourced>>;
  readonly shrinkageStartsAtPercent?: 22;
};

export const lookedUp = sourcedAs("looked-up");
export const secondary = sourcedAs("looked-up-secondary");
export const derived = sourcedAs("derived");
export const memory = sourcedAs("memory");

const WATER_KG_PER_M3 = 1000;
/** Moisture content every density here is given at, %. */
const MOISTURE_PERCENT = 12;
/** Where shrinkage starts in most species, %. Source: Wood Handbook chapter 4. */
const FIBRE_SATURATION_PERCENT = 30;
/** Volumetric shrinkage for each unit of basic specific gravity. Source: Wood Handbook chapter 4, from memory. */
const VOLUME_SHRINKAGE_PER_GRAVITY = 0.265;

/** A species from its table row: density at 12 % in kg/m³ and hardness in N beside what the row says. */
export function defineSpecies(group: Species["group"], row: SpeciesRow): Species {
  const { specificGravity, sideHardnessLbf, shrinkageStartsAtPercent, ...same } = row;
  return {
    ...same,
    kind: "species",
    group,
    hasGrain: true,
    isMeltable: false,
    densityKgPerM3:
      "basic" in specificGravity
        ? computed(specificGravity.basic, (basic) => densityKgPerM3(gravityAt12Percent(basic)))
        : computed(specificGravity.at12Percent, densityKgPerM3),
    sideHardnessN: {
      value: roundTo(sideHardnessLbf.value * N_PER_POUND_FORCE, 0),
      provenance: sideHardnessLbf.provenance,
    },
    shrinkageStartsAtPercent: shrinkageStartsAtPercent ?? FIBRE_SATURATION_PERCENT,
  };
}

/** Density in kg/m³ at 12 %: ρ = 1000·G·(1 + M/100). Source: Wood Handbook chapter 4. */
function densityKgPerM3(gravityAt12: number): number {
  return roundTo(WATER_KG_PER_M3 * gravityAt12 * (1 + MOISTURE_PERCENT / 100), 0);
}

/** G_M = G_b/(1 − 0.265·a·G_b), a = (30 − M)/30, at M = 12. Source: Wood Handbook chapter 4, from memory. */
function gravityAt12Percent(basic: number): number {
  const a = (FIBRE_SATURATION_PERCENT - MOISTURE_PERCENT) / FIBRE_SATURATION_PERCENT;
  return basic / (1 - VOLUME_SHRINKAGE_PER_GRAVITY * a * basic);
}

function computed(from: Sourced, compute: (value: number) => number): Sourced {
  return { value: compute(from.value), provenance: from.provenance === "memory" ? "memory" : "derived" };
}

function sourcedAs(provenance: Provenance) {
  return (value: number): Sourced => ({ value, provenance });
}
