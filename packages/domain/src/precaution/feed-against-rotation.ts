import { climbsOf } from "../cut/climbs.ts";
import { definePrecaution } from "./define.ts";

/** Fed with the rotation, the bit pulls the work. Source: common practice. */
export const feedAgainstRotation = definePrecaution({
  code: "feed-against-rotation",
  applies: ({ mounting, direction, cut }) =>
    // A climb cut on purpose has a finding of its own that says how light it must be.
    direction === undefined || direction === "with-rotation" || climbsOf(cut) !== undefined
      ? undefined
      : { mounting, direction },
});
