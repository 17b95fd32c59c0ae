import type { Pass } from "../cut/passes.ts";
import type { CutSetup } from "../cut/setup.ts";
import { spansOpening } from "./contact.ts";
import { defineGuide } from "./define.ts";
import { isAlongFence } from "./fence.ts";
import { planesWholeEdge } from "./whole-edge.ts";

/**
 * A fence in two halves, for a cut that takes the whole edge away: past the bit the work has lost what it ran on before, so the outfeed half
 * stands level with the bit's edge and the infeed half behind it by the cut. Source: common practice.
 */
export const fenceWithOffsetOutfeed = defineGuide({
  name: "fence-with-offset-outfeed",
  isSet: true,
  runsOnWork: false,
  serves: (context) => isAlongFence(context) && planesWholeEdge(context) && spansOpening(context),
  direction: () => "work-right-to-left",
  says: () => ["close-the-fence", "never-trap-the-work", "whole-edge-supported"],
});

/** The pass with its fence at the infeed half: each starts from the edge the last one left, so that the halves stand apart by one bite. */
export function withInfeedHalf(pass: Pass, { greatestRadiusMm }: CutSetup): Pass {
  return { ...pass, fenceMm: greatestRadiusMm - pass.geometry.biteMm };
}
