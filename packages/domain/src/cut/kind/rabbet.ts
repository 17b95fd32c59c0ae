import { formPilotRadiusMm } from "../../bit/form/registry.ts";
import { edgesFromMm } from "../../bit/outline.ts";
import { isParallel } from "../../bit/shape.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { DomainError } from "../../quantity/fault.ts";
import { optionalLengthMm } from "../../quantity/field.ts";
import { REACH_SLACK_MM } from "../base-setup.ts";
import { rabbetRuns, widestRunMm } from "../runs.ts";
import { defineCut } from "./define.ts";
import { alongEdge, backRout, depthMm } from "./work-fields.ts";

/** Walked up to by height. */
export const rabbet = defineCut({
  kind: "rabbet",
  meaning: "A rectangular step along an edge.",
  fields: {
    ...alongEdge,
    hasBackRout: backRout,
    depthMm,
    widthMm: optionalLengthMm(
      "Width of the step; wider than the bit, it is cut in runs side by side. Default: what the pilot gives, or the bit's radius without one.",
      0.1,
      150,
    ),
  },
  sides: 1,
  needs: { code: "parallel-edges", isMetBy: (_, outline) => isParallel(outline) },
  setup: (bit, outline, cut, setIn) => {
    const rimMm = rimRadiusMm(outline);
    const pilotRadiusMm = formPilotRadiusMm(bit.form);
    const largestMm = rimMm - (pilotRadiusMm ?? 0);
    const widthMm = cut.widthMm ?? largestMm;
    // A bearing holds the bit off; without one it goes as far over as the fence lets it.
    if (pilotRadiusMm !== undefined && widthMm > largestMm + REACH_SLACK_MM) {
      const values = { given: widthMm, max: largestMm };
      throw new DomainError([{ pointer: "/widthMm", code: "cut-too-wide", values }]);
    }
    const tipMm = edgesFromMm(outline);
    const runs = rabbetRuns(rimMm, widthMm, setIn);
    const fenceMm = rimMm - (runs?.by === "fence" ? widestRunMm(rimMm, runs.fencesMm) : widthMm);
    return {
      approach: "height",
      heightMm: tipMm + cut.depthMm,
      fenceMm,
      thicknessMm: cut.depthMm,
      rows: runs?.by === "fence" ? runs.fencesMm.length : 1,
      runs,
      waste: undefined,
      assumed: cut.widthMm === undefined ? [{ code: "fence-assumed", fenceMm }] : [],
      reach: { pointer: "/depthMm", zeroMm: tipMm },
    };
  },
});
