import { definePrecaution } from "./define.ts";

/** End grain breaks out where the bit leaves it, and so do the fibres of a cut across them. Source: common practice. */
export const backTheEndGrain = definePrecaution({
  code: "back-the-end-grain",
  applies: ({ cut, wood }) => {
    if (cut.edges.some(({ grain }) => grain === "end")) return { grain: "end" as const };
    const isAcross = wood.hasGrain && cut.edges.some(({ grain }) => grain === "across");
    return isAcross ? { grain: "across" as const } : undefined;
  },
});
