import type { Bit } from "../bit/bit.ts";
import { formUsualCut } from "../bit/form/registry.ts";
import type { Edge } from "../cut/edge.ts";
import type { Cut, CutSettings } from "../cut/kind/registry.ts";

/** The run a table of a whole shop is planned for: one metre along the grain. */
const RUN: readonly Edge[] = [{ lengthMm: 1000, grain: "long" }];

/**
 * The cut a bit is made for, over one metre of long grain, so that bits can be compared without asking for one each: a trimming for a
 * flush-trim bit, a step for a rabbet bit, a groove for parallel and pointed bits, the whole profile for the rest. For a bit that
 * `bitFaults` found nothing wrong with.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * usualCut(bit) // → { kind: "groove", depthMm: 3.175 }
 */
export function usualCut(bit: Bit): Cut {
  return { ...formUsualCut(bit.form), edges: RUN };
}

/**
 * How the cut that a bit is made for is set, in stock of any thickness.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * usualSettings(bit) // → { kind: "groove", depthMm: 3.175 }
 */
export function usualSettings(bit: Bit): CutSettings {
  const usual = formUsualCut(bit.form);
  switch (usual.kind) {
    case "edge":
    case "panel":
    case "joint":
      return { kind: usual.kind };
    case "groove":
    case "rabbet":
      return { kind: usual.kind, depthMm: usual.depthMm };
    case "trim":
      return { kind: usual.kind, overhangMm: usual.overhangMm };
  }
}
