import { isInside } from "../guide/define.ts";
import { definePrecaution } from "./define.ts";

/** Fed with the rotation, the bit pulls the work. Source: common practice. */
export const feedAgainstRotation = definePrecaution({
  code: "feed-against-rotation",
  applies: ({ mounting, cut }) =>
    // A climb cut on purpose has a finding of its own that says how light it must be.
    cut.feedDirection === "with-rotation" || ("backRout" in cut && cut.backRout === true)
      ? undefined
      : { mounting, isInside: isInside(cut) },
});
