import { definePrecaution } from "./define.ts";

/** A chipped edge throws more, and a dull one burns. Source: common practice. */
export const edgesWhole = definePrecaution({
  code: "edges-whole",
  applies: () => ({}),
});
