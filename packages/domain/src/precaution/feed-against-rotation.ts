import { definePrecaution } from "./define.ts";

/** Fed with the rotation, the bit pulls the work. Source: common practice. */
export const feedAgainstRotation = definePrecaution({
  code: "feed-against-rotation",
  applies: ({ mounting, cut }) => ({ mounting, isInside: "side" in cut && cut.side === "inside" }),
});
