import type { Plastic, Sheet } from "./wood.ts";

/** Sheet goods. Densities from memory: the middle of what each is commonly sold at. */
export const SHEETS: readonly Sheet[] = [
  { kind: "sheet", id: "mdf", name: "Medium-density fibreboard", densityKgPerM3: fromMemory(750) },
  { kind: "sheet", id: "plywood", name: "Plywood", densityKgPerM3: fromMemory(650) },
  { kind: "sheet", id: "particleboard", name: "Particleboard", densityKgPerM3: fromMemory(680) },
];

/** Plastics worked with wood bits. Densities from memory. */
export const PLASTICS: readonly Plastic[] = [
  { kind: "plastic", id: "solid-surface", name: "Solid-surface sheet", densityKgPerM3: fromMemory(1700) },
  { kind: "plastic", id: "acrylic", name: "Acrylic sheet", densityKgPerM3: fromMemory(1190) },
];

function fromMemory(value: number) {
  return { value, provenance: "memory" } as const;
}
