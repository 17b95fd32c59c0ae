import { definePrecaution } from "./define.ts";

/** Between bit and fence the work is thrown. Source: common practice. */
export const neverTrapTheWork = definePrecaution({
  code: "never-trap-the-work",
  applies: ({ mounting }) => (mounting === "table" ? {} : undefined),
});
