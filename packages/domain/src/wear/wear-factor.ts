import type { Wood } from "../wood/wood.ts";
import type { ToothMaterial } from "./tooth-material.ts";

/** Solid wood of this density wears an edge by one metre for each metre cut, kg/m³. Ours: the middle of the hardwoods. */
const REFERENCE_DENSITY_KG_PER_M3 = 600;

/** Least wear of any material, so that nothing is ever cut for free. Ours. */
const LEAST_FACTOR = 0.5;

/** Woods that hold silica and dull edges far beyond their density. Source: common practice; the factor is ours. */
const SILICEOUS: readonly string[] = ["teak"];
const SILICA_FACTOR = 2.5;

/** Boards bound with glue, in metres of reference wood for each metre. Ours; that glue dulls edges is common practice. */
const GLUED: Readonly<Record<string, number>> = {
  plywood: 2,
  mdf: 2.5,
  hardboard: 2.5,
  particleboard: 3,
};
const GLUED_UNKNOWN = 3;

/** Plastics filled with mineral wear like the worst board; plain ones like light wood. Ours. */
const FILLED_PLASTICS: readonly string[] = ["solid-surface"];
const FILLED_FACTOR = 3;
const PLAIN_PLASTIC_FACTOR = 0.7;

/** Steel suffers this much more than carbide from glue, silica and filler. Ours; that it suffers is common practice. */
const STEEL_IN_ABRASIVE_RATIO = 3;

/**
 * How many metres of solid wood of middling density one metre of this wood counts for, as wear of an edge of this material.
 * Solid wood by its density; glue-bound boards, siliceous woods and filled plastics more, and more again for steel. A tooth
 * material that is not known is taken as steel. Judgement, nothing measured.
 * @example
 * wearFactor(woodById("mdf"), "carbide-tipped") // → 2.5
 * wearFactor(woodById("mdf"), "unknown") // → 7.5
 */
export function wearFactor(wood: Wood, toothMaterial: ToothMaterial): number {
  const { factor, isAbrasive } = abrasiveness(wood);
  const isSteel = toothMaterial === "high-speed-steel" || toothMaterial === "unknown";
  return Math.max(LEAST_FACTOR, isAbrasive && isSteel ? factor * STEEL_IN_ABRASIVE_RATIO : factor);
}

function abrasiveness(wood: Wood): { readonly factor: number; readonly isAbrasive: boolean } {
  switch (wood.kind) {
    case "species": {
      const byDensity = wood.densityKgPerM3.value / REFERENCE_DENSITY_KG_PER_M3;
      const isAbrasive = SILICEOUS.includes(wood.id);
      return { factor: isAbrasive ? byDensity * SILICA_FACTOR : byDensity, isAbrasive };
    }
    case "sheet":
      return { factor: GLUED[wood.id] ?? GLUED_UNKNOWN, isAbrasive: true };
    case "plastic":
      return FILLED_PLASTICS.includes(wood.id)
        ? { factor: FILLED_FACTOR, isAbrasive: true }
        : { factor: PLAIN_PLASTIC_FACTOR, isAbrasive: false };
  }
}
