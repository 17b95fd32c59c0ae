import { type SetIn, settableMm } from "./settable.ts";
import { type CutSetup, settingShortOfEnd, standingOut } from "./setup.ts";

/**
 * How far short of its end, mm, the moved setting is at the nearest mark on the side that removes less: a lower bit, or a fence farther
 * forward. The same when `setIn` is undefined: any setting can be made.
 */
export function lighterShortMm(setup: CutSetup, beforeEndMm: number, setIn: SetIn | undefined): number {
  return shortAtMark(setup, beforeEndMm, setIn, setup.approach === "height" ? Math.floor : Math.ceil);
}

/** The same on the side that removes more, so that less is left to the end; 0 if no mark lies before it. */
export function heavierShortMm(setup: CutSetup, beforeEndMm: number, setIn: SetIn | undefined): number {
  const rounding = setup.approach === "height" ? Math.ceil : Math.floor;
  return Math.max(0, shortAtMark(setup, beforeEndMm, setIn, rounding));
}

function shortAtMark(
  setup: CutSetup,
  beforeEndMm: number,
  setIn: SetIn | undefined,
  rounding: (marks: number) => number,
): number {
  if (setIn === undefined || setup.approach === "once" || beforeEndMm === 0) return beforeEndMm;
  const { heightMm, fenceMm } = settingShortOfEnd(setup, beforeEndMm);
  return setup.approach === "height"
    ? setup.heightMm - settableHeightMm(setup, heightMm, setIn, rounding)
    : settableMm(fenceMm, setIn, rounding) - setup.fenceMm;
}

/** The cutter is what a person measures: without its bearing, and through what lies between it and the table or base. */
function settableHeightMm(
  setup: CutSetup,
  heightMm: number,
  setIn: SetIn,
  rounding: (marks: number) => number,
): number {
  const { cutterMm } = standingOut(setup, heightMm);
  return heightMm + settableMm(cutterMm, setIn, rounding) - cutterMm;
}
