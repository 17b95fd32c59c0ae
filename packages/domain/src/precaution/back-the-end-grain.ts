import { entersOwnHole } from "../bit/plunge.ts";
import { isStraight } from "../cut/course.ts";
import { definePrecaution } from "./define.ts";

type BackTheEndGrain = {
  readonly grain: "end" | "across";
  /** A block fits a straight end; along a curve the grain turns under the bit. */
  readonly isCurved: boolean;
};

/** End grain breaks out where the bit leaves it, and so do the fibres of a cut across them. Source: common practice. */
export const backTheEndGrain = definePrecaution<"back-the-end-grain", BackTheEndGrain>({
  code: "back-the-end-grain",
  applies: ({ bit, cut, wood }) => {
    // A recess, a plug and a keyhole end where they begin: the bit leaves the work nowhere.
    if (cut.kind === "inlay" || (cut.kind === "groove" && entersOwnHole(bit))) return undefined;
    const isCurved = !isStraight(cut);
    if (cut.edges.some(({ grain }) => grain === "end")) return { grain: "end", isCurved };
    const isAcross = wood.hasGrain && cut.edges.some(({ grain }) => grain === "across");
    return isAcross ? { grain: "across", isCurved } : undefined;
  },
});
