import type { Bit } from "../../bit/bit.ts";
import { formPilotRadiusMm } from "../../bit/form/registry.ts";
import type { Outline } from "../../bit/outline.ts";
import { isParallel } from "../../bit/shape.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { DomainError } from "../../quantity/fault.ts";
import type { RabbetCut } from "../cut.ts";
import { type BaseSetup, REACH_SLACK_MM } from "../setup.ts";
import { unsuitable } from "./unsuitable.ts";

/** The setting for a rectangular step along an edge, walked up to by height. */
export function rabbetSetup(bit: Bit, outline: Outline, cut: RabbetCut): BaseSetup {
  if (!isParallel(outline)) throw unsuitable("a bit with parallel edges: straight, spiral or rabbet");
  const rimMm = rimRadiusMm(outline);
  const pilotRadiusMm = formPilotRadiusMm(bit.form);
  const largestMm = rimMm - (pilotRadiusMm ?? 0);
  const widthMm = cut.widthMm ?? largestMm;
  if (widthMm > largestMm + REACH_SLACK_MM) {
    throw new DomainError([
      { pointer: "/widthMm", code: "cut-too-wide", values: { given: widthMm, max: largestMm } },
    ]);
  }
  const tipMm = outline.find(({ role }) => role === "edge")?.fromMm ?? 0;
  const fenceMm = rimMm - widthMm;
  return {
    approach: "height",
    heightMm: tipMm + cut.depthMm,
    fenceMm,
    thicknessMm: cut.depthMm,
    sides: 1,
    rows: 1,
    waste: undefined,
    assumed: cut.widthMm === undefined ? [{ code: "fence-assumed", fenceMm }] : [],
    reach: { pointer: "/depthMm", zeroMm: tipMm },
  };
}
