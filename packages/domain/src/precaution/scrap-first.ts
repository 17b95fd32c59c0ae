import { definePrecaution } from "./define.ts";

/** The first cut of a set-up is a trial, if no step asks for one. Source: common practice. */
export const scrapFirst = definePrecaution({
  code: "scrap-first",
  applies: ({ hasTestPiece }) => (hasTestPiece ? undefined : {}),
});
