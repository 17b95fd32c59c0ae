import { shortestContactMm } from "../cut/work-fit.ts";
import { definePrecaution, type PrecautionContext } from "./define.ts";

/** 12 in unless in an approved jig: a school rule (references §5). Source: common practice. */
const SHORTEST_BY_HAND_MM = 304.8;

/** Short work brings hands near the bit. A sled is the jig. Source: common practice. */
export const smallWork = definePrecaution({
  code: "small-work",
  applies: (context) => {
    if (context.guide === "sled") return undefined;
    const shortestMm = heldMm(context);
    return shortestMm < SHORTEST_BY_HAND_MM
      ? { mounting: context.mounting, shortestMm, leastMm: SHORTEST_BY_HAND_MM }
      : undefined;
  },
});

/** How long the work is where it is held: along the fence when it is fed by hand, its longer side when it is clamped. */
function heldMm({ mounting, cut }: PrecautionContext): number {
  const { lengthMm, widthMm } = cut.work ?? {};
  if (mounting === "table" || (lengthMm === undefined && widthMm === undefined))
    return shortestContactMm(cut);
  return Math.max(lengthMm ?? 0, widthMm ?? 0);
}
