import { isParallel } from "../../bit/shape.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { lengthMm, optionalRatio } from "../../quantity/field.ts";
import { defineCut } from "./define.ts";
import { depthMm } from "./work-fields.ts";

/** How far each row moves over if nothing is said. Ours: at half the diameter a row cuts wholly against the rotation. */
const USUAL_STEP_OVER_RATIO = 0.5;

/** Walked up to by height. */
export const surface = defineCut({
  kind: "surface",
  meaning: "Planes a surface in overlapping rows; each edge is one row's length.",
  fields: {
    depthMm,
    widthMm: lengthMm("Width of the surface, square to the rows.", 10, 3000),
    stepOverRatio: optionalRatio(
      `How far each row moves over, as a share of the bit's diameter. Default: ${USUAL_STEP_OVER_RATIO}.`,
      0.1,
      0.9,
    ),
  },
  sides: 1,
  needs: {
    code: "parallel-edges-without-pilot",
    isMetBy: (_, outline) => isParallel(outline) && outline.every(({ role }) => role !== "pilot"),
  },
  setup: (_, outline, cut) => {
    const rimMm = rimRadiusMm(outline);
    const stepMm = 2 * rimMm * (cut.stepOverRatio ?? USUAL_STEP_OVER_RATIO);
    return {
      approach: "height",
      heightMm: cut.depthMm,
      // In the frame of an edge cut: each row removes a strip as wide as the step.
      fenceMm: rimMm - stepMm,
      thicknessMm: cut.depthMm,
      rows: 1 + Math.ceil(Math.max(0, cut.widthMm - 2 * rimMm) / stepMm),
      waste: undefined,
      assumed: [],
      reach: { pointer: "/depthMm", zeroMm: 0 },
    };
  },
});
