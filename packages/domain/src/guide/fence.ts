import { spansOpening } from "./contact.ts";
import { defineGuide, type GuideContext, isClosedToFences } from "./define.ts";
import { removesWholeEdge } from "./whole-edge.ts";

/** The fence of a table, for a straight edge with a bit without a bearing, and for a groove along it. Source: common practice. */
export const fence = defineGuide({
  name: "fence",
  isSet: true,
  runsOnWork: false,
  serves: (context) => isAlongFence(context) && spansOpening(context) && !removesWholeEdge(context),
  direction: () => "work-right-to-left",
  // A groove lies over the bit, and the fence beside both.
  says: ({ setup }) =>
    setup.sides === 1 ? ["close-the-fence", "never-trap-the-work"] : ["fence-behind-bit"],
});

/** Whether the fence alone, without a bearing, says how deep a straight cut is on a table. */
export function isAlongFence(context: GuideContext): boolean {
  const { mounting, setup, pilotRadiusMm, cut } = context;
  if (mounting !== "table" || isClosedToFences(context) || cut.kind === "surface" || cut.kind === "trim")
    return false;
  return pilotRadiusMm === undefined || setup.fenceMm > pilotRadiusMm || setup.approach === "fence";
}
