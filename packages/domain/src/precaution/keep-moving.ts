import { definePrecaution } from "./define.ts";

/** A bit that dwells burns, first at its slowest point. Source: common practice. */
export const keepMoving = definePrecaution({
  code: "keep-moving",
  applies: () => ({}),
});
