import { isUndercut } from "../bit/shape.ts";
import type { BitSolid } from "../bit/solid.ts";
import { REACH_SLACK_MM } from "../cut/base-setup.ts";
import { wholeFenceMm } from "../cut/runs.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { Guide } from "../guide/registry.ts";

/** What to measure on a test piece of the same stock at the final setting, and what it must be, mm. */
export type TestPiece = {
  /** How deep the cut is in the face that lies on the table or under the base. */
  readonly depthMm?: number;
  /** How far it reaches in from the edge, or how wide a groove is that is cut in runs. */
  readonly widthMm?: number;
};

/**
 * What a test piece of this cut shows of its setting: its depth is the height's, its width the fence's. Undefined if nothing of it can
 * be corrected: a bearing decides the width, and a cut through the whole thickness has no depth.
 */
export function testPieceFor(setup: CutSetup, solid: BitSolid, guide: Guide): TestPiece | undefined {
  const { sides, heightMm, contactMm, thicknessMm, fenceMm, greatestRadiusMm, runs } = setup;
  // Over a slab on rails the work itself is the measure.
  if (guide.name === "rails") return undefined;
  if (guide.name === "template" || setup.bushing?.cutsThrough === true) return undefined;
  if (sides === 2) {
    // A groove as wide as the bit is as wide as the bit; one in runs is as wide as the last one makes it.
    return {
      depthMm: heightMm,
      ...(runs !== undefined && { widthMm: 2 * (greatestRadiusMm - wholeFenceMm(fenceMm, runs)) }),
    };
  }
  const depthMm = heightMm - contactMm;
  // A step is as deep as the work is cut, and ends in it; a fence that takes the whole edge off leaves no depth.
  const hasDepth =
    !isUndercut(solid.outline) &&
    (depthMm < thicknessMm || (setup.approach === "height" && depthMm <= thicknessMm + REACH_SLACK_MM));
  const hasWidth = guide.name === "fence" || guide.name === "edge-guide";
  if (!hasDepth && !hasWidth) return undefined;
  return {
    ...(hasDepth && { depthMm }),
    ...(hasWidth && { widthMm: greatestRadiusMm - wholeFenceMm(fenceMm, runs) }),
  };
}
