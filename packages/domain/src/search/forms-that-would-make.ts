import { formFaults } from "../bit/faults.ts";
import type { Sizes } from "../bit/form/read-wall.ts";
import { type Form, formOutline, formPilotRadiusMm, formsFor } from "../bit/form/registry.ts";
import { arc, line, type Outline } from "../bit/outline.ts";
import { allOf } from "../quantity/steps.ts";
import { marked, searchOneBit } from "./one-bit.ts";
import { type Piece, raised, upsideDown } from "./piece.ts";
import type { SearchSetting } from "./setting.ts";
import { type Target, targetsOf } from "./target.ts";
import { deepestMm, type Presentation, type WantedProfile } from "./wanted.ts";

/** A form and sizes that would make a profile in one set-up, and how it would be set. */
export type FormProposal = {
  readonly form: Form;
  /** Whether its sizes are among those that bits are sold in. */
  readonly isStandard: boolean;
  readonly setting: SearchSetting;
};

/**
 * Sizes in inches go by sixteenths, in mm by halves; angles by those that chamfer and V bits are sold with. Source: common
 * practice.
 */
const SIXTEENTH_INCH_MM = 25.4 / 16;
const HALF_MM = 0.5;
const ANGLES_DEG = [15, 22.5, 30, 45, 60] as const;

const STANDARD_SIZES: readonly Sizes[] = [SIXTEENTH_INCH_MM, HALF_MM].map((stepMm) => ({
  lengthMm: (mm) => stepMm * Math.max(1, Math.round(mm / stepMm)),
  angleDeg: (deg) =>
    ANGLES_DEG.reduce((best, each) => (Math.abs(each - deg) < Math.abs(best - deg) ? each : best)),
}));

const AS_READ: Sizes = { lengthMm: (mm) => mm, angleDeg: (deg) => deg };

/**
 * The forms, and their sizes, that would make a wanted profile in one set-up: those in sizes that are sold first, then those
 * that leave least. Sizes are read off the profile by each form itself, and every proposal was tried by the search for one bit.
 * @example
 * const segments = [{ kind: "arc", xMm: 0, zMm: 6.3, arcRadiusMm: 6.3, curve: "round" }];
 * const wanted = wantedFrom({ thicknessMm: 19, start: { xMm: 6.3, zMm: 0 }, segments });
 * formsThatWouldMake(wanted, 0.1)[0].form // → { kind: "round-over", radiusMm: 6.35 }
 */
export function formsThatWouldMake(wanted: WantedProfile, toleranceMm: number): FormProposal[] {
  const targets = targetsOf(wanted, toleranceMm);
  const walls = targets
    .flatMap((target) => target.presentations.map((presentation) => outlineOfWall(target, presentation)))
    .filter((wall) => wall !== undefined);
  const read = (sizes: Sizes) => walls.flatMap((wall) => formsFor(wall, sizes));
  const standard = distinct(STANDARD_SIZES.flatMap(read));
  const known = new Set(standard.map(keyOf));
  const asRead = distinct(read(AS_READ)).filter((form) => !known.has(keyOf(form)));
  const marks = targets.map(marked);
  const tried = (forms: readonly Form[], isStandard: boolean) =>
    forms
      .flatMap((form): FormProposal[] => {
        const setting = settingOf(form);
        return setting === undefined ? [] : [{ form, isStandard, setting }];
      })
      .sort((one, other) => one.setting.greatestLeftMm - other.setting.greatestLeftMm);
  const settingOf = (form: Form): SearchSetting | undefined => {
    if (formFaults(form).length > 0) return undefined;
    const bit = { id: form.kind, outline: formOutline(form), pilotRadiusMm: formPilotRadiusMm(form) };
    const { settings } = allOf(searchOneBit(bit, marks, wanted.thicknessMm));
    return [...settings].sort((one, other) => one.greatestLeftMm - other.greatestLeftMm)[0];
  };
  return [...tried(standard, true), ...tried(asRead, false)];
}

/**
 * The outline of a bit that would just fill the wall with its axis at the fence; undefined if the waste is in several parts.
 */
function outlineOfWall({ wall }: Target, { work, face }: Presentation): Outline | undefined {
  const isTurned = work === "flat" && face === "back";
  const upward = wall.pieces.map((piece) => ({ piece, isDeep: deepestMm([piece]) > 0 }));
  const first = upward.findIndex(({ isDeep }) => isDeep);
  const last = upward.findLastIndex(({ isDeep }) => isDeep);
  const waste = upward.slice(first, last + 1);
  if (waste.length === 0 || waste.some(({ isDeep }) => !isDeep)) return undefined;
  const pieces = waste.map(({ piece }) => piece);
  // A bit stands with its tip up, or with the work turned over, down.
  const fromTip = isTurned ? pieces : pieces.map(upsideDown).reverse();
  const tipMm = fromTip[0]?.fromMm ?? 0;
  return fromTip.map((piece) => segmentOf(raised(piece, -tipMm)));
}

function segmentOf(piece: Piece): Outline[number] {
  if (piece.kind === "line") return line(piece.fromMm, piece.toMm, piece.startDepthMm, piece.endDepthMm);
  const { centreMm, centreDepthMm, arcRadiusMm, side } = piece;
  return arc(piece.fromMm, piece.toMm, { centreMm, centreRadiusMm: centreDepthMm, arcRadiusMm, side });
}

function distinct(forms: readonly Form[]): Form[] {
  return [...new Map(forms.map((form) => [keyOf(form), form])).values()];
}

/** Sizes that differ by rounding are the same. */
function keyOf(form: Form): string {
  return JSON.stringify(form, (_, value: unknown) =>
    typeof value === "number" ? Number(value.toFixed(6)) : value,
  );
}
