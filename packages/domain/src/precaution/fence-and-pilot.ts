import { definePrecaution } from "./define.ts";

/** A pilot bearing guides, a fence flush with it holds. Source: common practice. */
export const fenceAndPilot = definePrecaution({
  code: "fence-and-pilot",
  applies: ({ mounting, pilotRadiusMm, cut }) => {
    const isCurved = "curved" in cut && cut.curved === true;
    return mounting === "table" && pilotRadiusMm !== undefined && !isCurved ? {} : undefined;
  },
});
