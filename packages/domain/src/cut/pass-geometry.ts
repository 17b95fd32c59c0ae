import type { Outline } from "../bit/outline.ts";
import { engagedDepthMm, radiiInUse } from "../bit/section.ts";
import { type CutSetup, sectionMm2, settingShortOfEnd } from "./setup.ts";

/** One pass as geometry, before anything is known of its load. */
export type PassGeometry = {
  /** How far the moved setting still is from its end when this pass is done, mm. */
  readonly beforeEndMm: number;
  /** How far the setting moved since the pass before, mm. */
  readonly biteMm: number;
  /** Section of wood this pass removes. */
  readonly removedAreaMm2: number;
  /** Extent of the cut square to the direction the setting moves. */
  readonly engagedMm: number;
  /** Greatest radius that touches wood. */
  readonly greatestRadiusMm: number;
};

/** The pass that moves the setting from `fromMm` to `toMm` short of its end. */
export function passBetween(outline: Outline, setup: CutSetup, fromMm: number, toMm: number): PassGeometry {
  const setting = settingShortOfEnd(setup, toMm);
  const greatestRadiusMm = radiiInUse(outline, setting)?.greatestMm ?? setting.fenceMm;
  const engagedMm =
    setup.approach === "height"
      ? setup.sides * (greatestRadiusMm - setting.fenceMm)
      : engagedDepthMm(outline, setting);
  return {
    beforeEndMm: toMm,
    biteMm: fromMm - toMm,
    // What is made at once has nothing before it; its first contact may lie anywhere along the edge.
    removedAreaMm2:
      sectionMm2(outline, setup, toMm) - (setup.approach === "once" ? 0 : sectionMm2(outline, setup, fromMm)),
    engagedMm,
    greatestRadiusMm,
  };
}
