import type { Plastic, Sheet } from "./wood.ts";

/** Sheet goods. Densities from memory: the middle of what each is commonly sold at. Notes: common practice. */
export const SHEETS: readonly Sheet[] = [
  {
    kind: "sheet",
    id: "mdf",
    name: "Medium-density fibreboard",
    densityKgPerM3: fromMemory(750),
    hasGrain: false,
    isMeltable: false,
    note: "No grain to tear. Fine dust; the glue dulls steel edges. Swells where it gets wet.",
  },
  {
    kind: "sheet",
    id: "plywood",
    name: "Plywood",
    densityKgPerM3: fromMemory(650),
    hasGrain: true,
    isMeltable: false,
    note: "Face veneers splinter across their grain; every other layer is end grain, and glue lines dull the edge.",
  },
  {
    kind: "sheet",
    id: "particleboard",
    name: "Particleboard",
    densityKgPerM3: fromMemory(680),
    hasGrain: false,
    isMeltable: false,
    note: "No grain, but its corners crumble; the glue dulls steel edges. Swells where it gets wet.",
  },
  {
    kind: "sheet",
    id: "hardboard",
    name: "Hardboard",
    densityKgPerM3: fromMemory(950),
    hasGrain: false,
    isMeltable: false,
    note: "No grain to tear. Thin, so that it needs holding down close to the bit.",
  },
];

/** Plastics worked with wood bits. Densities from memory. Notes: common practice. */
export const PLASTICS: readonly Plastic[] = [
  {
    kind: "plastic",
    id: "solid-surface",
    name: "Solid-surface sheet",
    densityKgPerM3: fromMemory(1700),
    hasGrain: false,
    isMeltable: true,
    note: "Filled acrylic: heavy, dusty, and it softens where a bit rubs.",
  },
  {
    kind: "plastic",
    id: "acrylic",
    name: "Acrylic sheet",
    densityKgPerM3: fromMemory(1190),
    hasGrain: false,
    isMeltable: true,
    note: "Softens near 100 °C (from memory) and welds itself behind a slow bit; chips at corners.",
  },
  {
    kind: "plastic",
    id: "polycarbonate",
    name: "Polycarbonate sheet",
    densityKgPerM3: fromMemory(1200),
    hasGrain: false,
    isMeltable: true,
    note: "Tough, does not chip; softens near 150 °C (from memory) and clogs a dull bit.",
  },
  {
    kind: "plastic",
    id: "polyethylene",
    name: "Polyethylene sheet",
    densityKgPerM3: fromMemory(955),
    hasGrain: false,
    isMeltable: true,
    note: "High-density sheet: melts near 130 °C (from memory), long soft chips wrap around the bit.",
  },
];

function fromMemory(value: number) {
  return { value, provenance: "memory" } as const;
}
