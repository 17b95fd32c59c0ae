import { definePrecaution } from "./define.ts";

/** A handheld router takes both hands, so the work needs clamps. Source: common practice. */
export const bothHands = definePrecaution({
  code: "both-hands",
  applies: ({ mounting }) => (mounting === "handheld" ? {} : undefined),
});
