import { definePrecaution } from "./define.ts";

/** A pilot bearing guides, a fence flush with it holds. Source: common practice. */
export const fenceAndPilot = definePrecaution({
  code: "fence-and-pilot",
  applies: ({ guide }) => (guide === "fence-flush-with-bearing" ? {} : undefined),
});
