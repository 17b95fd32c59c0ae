import type { GuidePrecaution } from "../guide/define.ts";
import { definePrecaution } from "./define.ts";

/** A precaution that belongs to a guide: it applies when the guide says so. */
function ofGuide<const Code extends GuidePrecaution>(code: Code) {
  return definePrecaution({ code, applies: ({ guideSays }) => (guideSays.includes(code) ? {} : undefined) });
}

/** One whose side is the wrong one when the cut is fed with the rotation. */
function ofGuideAgainstRotation<const Code extends GuidePrecaution>(code: Code) {
  return definePrecaution({
    code,
    applies: ({ guideSays, direction }) =>
      guideSays.includes(code) && direction !== "with-rotation" ? {} : undefined,
  });
}

export const fenceAndPilot = ofGuide("fence-and-pilot");
export const startingPin = ofGuide("starting-pin");
export const neverTrapTheWork = ofGuide("never-trap-the-work");
export const closeTheFence = ofGuide("close-the-fence");
export const supportBothEnds = ofGuide("support-both-ends");
export const templateFixed = ofGuide("template-fixed");
export const bearingOnTemplate = ofGuide("bearing-on-template");
export const workClampedOnSled = ofGuide("work-clamped-on-sled");
export const workCannotRock = ofGuide("work-cannot-rock");
export const wholeEdgeSupported = ofGuide("whole-edge-supported");
export const fenceBehindBit = ofGuideAgainstRotation("fence-behind-bit");
export const straightedgeOnLeft = ofGuideAgainstRotation("straightedge-on-left");
export const guidedEdgeOnRight = ofGuideAgainstRotation("guided-edge-on-right");
