import { definePrecaution } from "./define.ts";

/** The first cut of a set-up is a trial. Source: common practice. */
export const scrapFirst = definePrecaution({
  code: "scrap-first",
  applies: () => ({}),
});
