import { definePrecaution } from "./define.ts";

/** End grain breaks out where the bit leaves it. Source: common practice. */
export const backTheEndGrain = definePrecaution({
  code: "back-the-end-grain",
  applies: ({ cut }) => (cut.edges.some(({ grain }) => grain === "end") ? {} : undefined),
});
