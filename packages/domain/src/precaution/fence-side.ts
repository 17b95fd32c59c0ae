import { cutSummary } from "../cut/kind/registry.ts";
import { definePrecaution } from "./define.ts";

/** A guide on the wrong side lets the bit pull the work or router away from it. Source: common practice. */
export const fenceSide = definePrecaution({
  code: "fence-side",
  applies: ({ mounting, cut }) =>
    cutSummary(cut.kind).sides === 2 && cut.feedDirection !== "with-rotation" ? { mounting } : undefined,
});
