import type { Bit } from "../bit/bit.ts";
import { formOutline, formPilotRadiusMm } from "../bit/form/registry.ts";
import { outlineLengthMm } from "../bit/outline.ts";
import { isParallel } from "../bit/shape.ts";
import { rimRadiusMm } from "../bit/solid.ts";
import type { Cut, Edge } from "../cut/cut.ts";

/** The run a table of a whole shop is planned for: one metre along the grain. */
const RUN: readonly Edge[] = [{ lengthMm: 1000, grain: "long" }];

/** A trial groove is this share of the bit's diameter deep. Ours. */
const GROOVE_SHARE = 0.25;

/** A trial trimming takes this much, mm: about 1/16 in. Ours. */
const TRIM_MM = 1.5;

/** Stock thick enough for the whole of any profile, mm. */
const THICK_MM = 150;

/**
 * The cut a bit is made for, so that bits can be compared without asking for one each: a trimming for a flush-trim bit, a groove
 * for parallel and pointed bits, the whole profile along an edge for the rest.
 */
export function usualCut(bit: Bit): Cut {
  const outline = formOutline(bit.form);
  const pilotRadiusMm = formPilotRadiusMm(bit.form);
  switch (bit.form.kind) {
    case "flush-trim":
      return { kind: "trim", edges: RUN, overhangMm: TRIM_MM, thicknessMm: bit.form.cuttingLengthMm };
    case "dovetail":
    case "keyhole":
    case "t-slot":
    case "v-groove":
    case "core-box":
      return { kind: "groove", edges: RUN, depthMm: outlineLengthMm(outline) };
  }
  if (pilotRadiusMm === undefined && isParallel(outline)) {
    const depthMm = Math.min(outlineLengthMm(outline), 2 * rimRadiusMm(outline) * GROOVE_SHARE);
    return { kind: "groove", edges: RUN, depthMm };
  }
  return { kind: "edge", edges: RUN, thicknessMm: THICK_MM };
}
