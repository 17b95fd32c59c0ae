import { definePrecaution } from "./define.ts";

/** The tool's own marking, the manual and the person in charge come before any plan. Source: common practice. */
export const readMarkings = definePrecaution({
  code: "read-markings",
  applies: () => ({}),
});
