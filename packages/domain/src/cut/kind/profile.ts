import type { Bit } from "../../bit/bit.ts";
import { formPilotRadiusMm, formSummary } from "../../bit/form/registry.ts";
import { edgesFromMm, type Outline, outlineLengthMm, segmentSpanMm } from "../../bit/outline.ts";
import { type BitSetting, radiiInUse, removedAreaMm2 } from "../../bit/section.ts";
import { isParallel, isUndercut } from "../../bit/shape.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { DomainError, type Fault } from "../../quantity/fault.ts";
import { type FieldsOf, optionalLengthMm } from "../../quantity/field.ts";
import type { BaseSetup, SetupAssumption } from "../base-setup.ts";
import { ASSUMED_THICKNESS_MM, alongEdge, backRout, workThicknessMm } from "./work-fields.ts";

/** The fields of every profile along an edge. */
export const profileFields = {
  ...alongEdge,
  hasBackRout: backRout,
  thicknessMm: workThicknessMm,
  heightMm: optionalLengthMm(
    "How far the bit stands out of the table or base at the end, or out of the template that a bushing runs on. Default: its whole profile.",
    0.1,
    200,
  ),
  fenceMm: optionalLengthMm(
    "How far its axis stands behind the fence or pilot contact. Default: the pilot's radius; without one the least radius of the profile, or 0 for a parallel bit.",
    0,
    100,
  ),
};

/** The lightest finishing rise that is ever planned, mm, and a section that is none, mm². */
const LAST_RISE_MM = 0.05;
const NOTHING_MM2 = 1e-9;

/** The setting that a kind of cut usually ends at. */
export type UsualEnd = { readonly heightMm: number; readonly fenceMm: number };

/** The setting for a profile along an edge, a raised panel or half of a joint. `usual` is where it ends if nobody says; default: its whole profile. */
export function profileSetup(
  bit: Bit,
  outline: Outline,
  cut: FieldsOf<typeof profileFields>,
  usual?: UsualEnd,
): BaseSetup {
  const pilotRadiusMm = formPilotRadiusMm(bit.form);
  const heightMm = cut.heightMm ?? usual?.heightMm ?? outlineLengthMm(outline);
  const fenceMm = cut.fenceMm ?? pilotRadiusMm ?? usual?.fenceMm ?? innermostMm(outline);
  // On edge against a tall fence a panel's whole face lies along the bit, and its thickness across it.
  const standing = formSummary(bit.form.kind).work === "standing";
  const thicknessMm = standing ? outlineLengthMm(outline) : (cut.thicknessMm ?? ASSUMED_THICKNESS_MM);
  const faults = fenceFaults(fenceMm, pilotRadiusMm, rimRadiusMm(outline));
  if (faults.length > 0) throw new DomainError(faults);
  const assumed: SetupAssumption[] = [];
  if (cut.thicknessMm === undefined && !standing) assumed.push({ code: "thickness-assumed", thicknessMm });
  if (cut.heightMm === undefined) {
    assumed.push({ code: "height-assumed", cutterMm: heightMm - edgesFromMm(outline) });
  }
  if (cut.fenceMm === undefined) assumed.push({ code: "fence-assumed", fenceMm });
  // Parallel edges cut their full height from the first touch, and an undercut profile fits only at its own height: there
  // only the fence can take it in steps.
  const byFence =
    standing ||
    isUndercut(outline) ||
    (isParallel(outline) && pilotRadiusMm === undefined) ||
    hasStalled(outline, { heightMm, fenceMm, thicknessMm });
  return {
    approach: byFence ? "fence" : "height",
    heightMm,
    fenceMm,
    thicknessMm,
    rows: 1,
    waste: undefined,
    assumed,
    reach: { pointer: "/heightMm", zeroMm: 0 },
  };
}

/** Whether the last of a rise removes nothing: a parallel part longer than the work is thick slides past it. */
function hasStalled(outline: Outline, end: BitSetting): boolean {
  const before = { ...end, heightMm: end.heightMm - LAST_RISE_MM };
  return removedAreaMm2(outline, end) - removedAreaMm2(outline, before) <= NOTHING_MM2;
}

/** Where the fence stands for a bit without a pilot: at the least radius of its profile, or half of a disc or a parallel bit shows. */
function innermostMm(outline: Outline): number {
  if (isParallel(outline)) return 0;
  const whole = { heightMm: outlineLengthMm(outline), fenceMm: 0, thicknessMm: outlineLengthMm(outline) };
  return profileFenceMm(outline, radiiInUse(outline, whole)?.leastMm ?? 0);
}

/**
 * The least radius of a profile as its fence. A plain disc has no innermost part that could meet the fence: it shows as far as its arbor
 * lets it.
 */
export function profileFenceMm(outline: Outline, leastMm: number): number {
  if (leastMm < rimRadiusMm(outline)) return leastMm;
  const bodies = outline.filter(({ role }) => role === "body");
  return Math.max(0, ...bodies.map((segment) => segmentSpanMm(segment).greatestMm));
}

function fenceFaults(fenceMm: number, pilotRadiusMm: number | undefined, rimMm: number): Fault[] {
  const faults: Fault[] = [];
  if (pilotRadiusMm !== undefined && fenceMm < pilotRadiusMm) {
    faults.push({
      pointer: "/fenceMm",
      code: "out-of-range",
      values: { given: fenceMm, min: pilotRadiusMm },
    });
  }
  if (fenceMm >= rimMm) faults.push({ pointer: "/fenceMm", code: "nothing-removed", values: {} });
  return faults;
}
