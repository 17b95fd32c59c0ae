/** What the cutting edges are made of. `unknown` is taken as the one that dulls first. */
export const TOOTH_MATERIALS = [
  "high-speed-steel",
  "carbide-tipped",
  "solid-carbide",
  "diamond",
  "unknown",
] as const;

export type ToothMaterial = (typeof TOOTH_MATERIALS)[number];
