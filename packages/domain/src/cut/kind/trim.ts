import type { Bit } from "../../bit/bit.ts";
import { formPilotRadiusMm } from "../../bit/form/registry.ts";
import { type Outline, outlineLengthMm } from "../../bit/outline.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { DomainError } from "../../quantity/fault.ts";
import type { TrimCut } from "../cut.ts";
import type { BaseSetup } from "../setup.ts";
import { ASSUMED_THICKNESS_MM } from "./profile.ts";
import { unsuitable } from "./unsuitable.ts";

/** A bearing is as wide as its bit within this, mm: both are measured. */
const FLUSH_MM = 0.1;

/** The setting that trims an overhang in one run: the bearing decides where it ends. */
export function trimSetup(bit: Bit, outline: Outline, cut: TrimCut): BaseSetup {
  const rimMm = rimRadiusMm(outline);
  const pilotRadiusMm = formPilotRadiusMm(bit.form);
  if (pilotRadiusMm === undefined || Math.abs(pilotRadiusMm - rimMm) > FLUSH_MM)
    throw unsuitable("a flush-trim bit");
  const thicknessMm = cut.thicknessMm ?? ASSUMED_THICKNESS_MM;
  const edge = outline.find(({ role }) => role === "edge");
  const cuttingMm = edge === undefined ? 0 : edge.toMm - edge.fromMm;
  if (thicknessMm > cuttingMm) {
    const values = { given: thicknessMm, max: cuttingMm };
    throw new DomainError([{ pointer: "/thicknessMm", code: "setting-out-of-reach", values }]);
  }
  if (cut.overhangMm > rimMm) {
    throw new DomainError([
      { pointer: "/overhangMm", code: "cut-too-wide", values: { given: cut.overhangMm, max: rimMm } },
    ]);
  }
  return {
    approach: "once",
    heightMm: edge?.toMm ?? outlineLengthMm(outline),
    fenceMm: rimMm - cut.overhangMm,
    thicknessMm,
    sides: 1,
    rows: 1,
    waste: undefined,
    assumed: cut.thicknessMm === undefined ? [{ code: "thickness-assumed", thicknessMm }] : [],
    reach: { pointer: "/thicknessMm", zeroMm: 0 },
  };
}
