import { formPilotRadiusMm } from "../../bit/form/registry.ts";
import { isParallel } from "../../bit/shape.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { DomainError } from "../../quantity/fault.ts";
import { optionalLengthMm } from "../../quantity/field.ts";
import { REACH_SLACK_MM } from "../base-setup.ts";
import { defineCut } from "./define.ts";
import { alongEdge, depthMm } from "./work-fields.ts";

/** Walked up to by height. */
export const rabbet = defineCut({
  kind: "rabbet",
  meaning: "A rectangular step along an edge.",
  fields: {
    ...alongEdge,
    depthMm,
    widthMm: optionalLengthMm(
      "Width of the step. Default: what the pilot gives, or the bit's radius without one.",
      0.1,
      100,
    ),
  },
  sides: 1,
  needs: { code: "parallel-edges", isMetBy: (_, outline) => isParallel(outline) },
  setup: (bit, outline, cut) => {
    const rimMm = rimRadiusMm(outline);
    const largestMm = rimMm - (formPilotRadiusMm(bit.form) ?? 0);
    const widthMm = cut.widthMm ?? largestMm;
    if (widthMm > largestMm + REACH_SLACK_MM) {
      const values = { given: widthMm, max: largestMm };
      throw new DomainError([{ pointer: "/widthMm", code: "cut-too-wide", values }]);
    }
    const tipMm = outline.find(({ role }) => role === "edge")?.fromMm ?? 0;
    const fenceMm = rimMm - widthMm;
    return {
      approach: "height",
      heightMm: tipMm + cut.depthMm,
      fenceMm,
      thicknessMm: cut.depthMm,
      rows: 1,
      waste: undefined,
      assumed: cut.widthMm === undefined ? [{ code: "fence-assumed", fenceMm }] : [],
      reach: { pointer: "/depthMm", zeroMm: tipMm },
    };
  },
});
