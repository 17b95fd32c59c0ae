import { definePrecaution } from "./define.ts";

/** Along an edge more than half of the base hangs over. Source: common practice. */
export const supportTheBase = definePrecaution({
  code: "support-the-base",
  applies: ({ mounting, setup, guide }) =>
    mounting === "handheld" && setup.sides === 1 && guide !== "rails" ? {} : undefined,
});
