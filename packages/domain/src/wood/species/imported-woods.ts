// Woods imported into North America: specific gravity and side hardness from Wood Handbook Tables 5-3b and 5-5b,
// change coefficients from Table 13-5, shrinkage from Tables 4-3 and 4-4 (USDA Forest Products Laboratory, FPL-GTR-190 and 282).
// One entry a species: a table, kept whole even if it is long.

import type { Species } from "../wood.ts";
import { defineSpecies, derived, lookedUp, memory, type SpeciesRow, secondary } from "./define.ts";

const ROWS: readonly SpeciesRow[] = [
  {
    id: "true-mahogany",
    name: "True mahogany",
    botanicalName: "Swietenia macrophylla",
    specificGravity: { basic: memory(0.45) },
    sideHardnessLbf: secondary(800),
    changeCoefficient: { radial: memory(0.00172), tangential: memory(0.00238) },
    note: "Table 4-4 prints shrinkage 3.0 and 4.1 %, which does not give the coefficients of Table 13-5; the coefficients are used.",
  },
  {
    id: "african-mahogany",
    name: "African mahogany (khaya)",
    botanicalName: "Khaya spp.",
    specificGravity: { basic: memory(0.42) },
    sideHardnessLbf: secondary(830),
    changeCoefficient: { radial: memory(0.00141), tangential: memory(0.00201) },
    note: "Table 4-4 prints shrinkage 2.5 and 4.5 %, which does not give the coefficients of Table 13-5; the coefficients are used.",
  },
  {
    id: "teak",
    name: "Teak",
    botanicalName: "Tectona grandis",
    specificGravity: { basic: lookedUp(0.55) },
    sideHardnessLbf: lookedUp(1000),
    changeCoefficient: { radial: memory(0.00101), tangential: secondary(0.00186) },
    note: "Remembered shrinkage 2.5 and 5.8 % does not give the coefficients of Table 13-5; the coefficients are used.",
  },
  {
    id: "spanish-cedar",
    name: "Spanish-cedar",
    botanicalName: "Cedrela spp.",
    specificGravity: { basic: lookedUp(0.41) },
    sideHardnessLbf: lookedUp(600),
    changeCoefficient: { radial: memory(0.00141), tangential: memory(0.00219) },
  },
  {
    id: "dark-red-meranti",
    name: "Dark red meranti",
    botanicalName: "Shorea spp.",
    specificGravity: { basic: lookedUp(0.46) },
    sideHardnessLbf: lookedUp(780),
    changeCoefficient: { radial: memory(0.00133), tangential: memory(0.00267) },
    note: 'Coefficients are those of the row "Lauan, dark red".',
  },
  {
    id: "purpleheart",
    name: "Purpleheart",
    botanicalName: "Peltogyne spp.",
    specificGravity: { basic: memory(0.67) },
    sideHardnessLbf: secondary(1860),
    changeCoefficient: { radial: derived(0.00109), tangential: secondary(0.00212) },
    shrinkagePercent: { radial: memory(3.2), tangential: memory(6.1) },
    note: "Not in Table 13-5.",
  },
  {
    id: "jatoba",
    name: "Jatoba",
    botanicalName: "Hymenaea courbaril",
    specificGravity: { basic: memory(0.71) },
    sideHardnessLbf: secondary(2350),
    changeCoefficient: { radial: derived(0.00155), tangential: secondary(0.003) },
    shrinkagePercent: { radial: memory(4.5), tangential: memory(8.5) },
    note: "Not in Table 13-5.",
  },
  {
    id: "sapele",
    name: "Sapele",
    botanicalName: "Entandrophragma cylindricum",
    specificGravity: { basic: memory(0.55) },
    sideHardnessLbf: secondary(1510),
    changeCoefficient: { radial: derived(0.00158), tangential: derived(0.00259) },
    shrinkagePercent: { radial: memory(4.6), tangential: memory(7.4) },
    note: "Not in Table 13-5.",
  },
  {
    id: "african-padauk",
    name: "African padauk",
    botanicalName: "Pterocarpus soyauxii",
    specificGravity: { basic: memory(0.61) },
    sideHardnessLbf: secondary(1725),
    changeCoefficient: { radial: derived(0.00112), tangential: secondary(0.0018) },
    shrinkagePercent: { radial: memory(3.3), tangential: memory(5.2) },
    note: "Not in Table 13-5.",
  },
];

/** Woods imported into North America. */
export const IMPORTED_WOODS: readonly Species[] = ROWS.map((row) => defineSpecies("imported", row));
