import type { Outline } from "../../bit/outline.ts";
import { isParallel } from "../../bit/shape.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import type { SurfaceCut } from "../cut.ts";
import type { BaseSetup } from "../setup.ts";
import { unsuitable } from "./unsuitable.ts";

/** Share of the diameter each row moves over where none is given. Ours: half, a row cuts with half the bit, wholly against the rotation. */
const USUAL_STEP_OVER_RATIO = 0.5;

/** The setting that planes a surface in overlapping rows, walked up to by height. */
export function surfaceSetup(outline: Outline, cut: SurfaceCut): BaseSetup {
  if (!isParallel(outline) || outline.some(({ role }) => role === "pilot")) {
    throw unsuitable("a bit with parallel edges and no pilot: surfacing, straight or spiral");
  }
  const rimMm = rimRadiusMm(outline);
  const stepMm = 2 * rimMm * (cut.stepOverRatio ?? USUAL_STEP_OVER_RATIO);
  return {
    approach: "height",
    heightMm: cut.depthMm,
    // In the frame of an edge cut: each row removes a strip as wide as the step.
    fenceMm: rimMm - stepMm,
    thicknessMm: cut.depthMm,
    sides: 1,
    rows: 1 + Math.ceil(Math.max(0, cut.widthMm - 2 * rimMm) / stepMm),
    waste: undefined,
    assumed: [],
    reach: { pointer: "/depthMm", zeroMm: 0 },
  };
}
