import type { JointFindingCode } from "../../../joint/finding.ts";
import type { HalfName } from "../../../joint/kind/define.ts";

/** What each finding of a joint means. */
export const JOINT_FINDING_MEANINGS: Readonly<Record<JointFindingCode, string>> = {
  "goes-in-too-tight": "What goes into the other half is thicker than the fit asked takes.",
  "goes-in-too-loose": "What goes into the other half is thinner than the fit asked takes.",
  "stays-open": "The halves do not touch everywhere when they are pushed together.",
  "faces-not-flush": "The faces of the two parts do not lie in one plane.",
  "ends-not-flush": "The end of one part does not lie in one plane with the face of the other.",
  "back-not-reached": "The cope bit does not cut as far as the back of the rail.",
  "sharpened-apart": "The two bits are no longer a pair: what one leaves does not fit what the other leaves.",
  "pair-matches": "The two bits are a pair.",
  "not-a-pair": "No joint is made by these two bits.",
};

/** What each half of a joint is. */
export const HALF_MEANINGS: Readonly<Record<HalfName, string>> = {
  stick: "The inside edge of a stile or rail, with its groove.",
  cope: "The end of a rail, with its stub tongue.",
  groove: "The part with the groove.",
  tongue: "The part with the tongue.",
  lying: "The part that lies on the table.",
  standing: "The part that stands on its end against the fence.",
  "face-down": "The part that is cut with its face down.",
  "face-up": "The part that is cut with its face up.",
  tail: "The part that stands on its end and gets the tail.",
  frame: "The inside edge of the frame, with its groove.",
  panel: "The panel, with its tongue.",
};
