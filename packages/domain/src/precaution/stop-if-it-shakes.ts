import { definePrecaution } from "./define.ts";

/** A bit that shakes at a speed is not run at that speed. Source: common practice. */
export const stopIfItShakes = definePrecaution({
  code: "stop-if-it-shakes",
  applies: () => ({}),
});
