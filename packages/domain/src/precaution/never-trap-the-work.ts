import { cutSummary } from "../cut/kind/registry.ts";
import { definePrecaution } from "./define.ts";

/** Between bit and fence the work is thrown. Source: common practice. */
export const neverTrapTheWork = definePrecaution({
  code: "never-trap-the-work",
  applies: ({ guide, cut }) => {
    const isAlongFence = guide === "fence" || guide === "fence-flush-with-bearing";
    // A groove lies over the bit, and the fence beside both.
    return isAlongFence && cutSummary(cut.kind).sides === 1 ? {} : undefined;
  },
});
