import { definePrecaution } from "./define.ts";

/** 4 in: the larger of two school rules (references §5). Source: common practice. */
const HANDS_AWAY_MM = 101.6;

/** Hands stay away from a bit that stands out of a table. Source: common practice. */
export const guardAndPushBlocks = definePrecaution({
  code: "guard-and-push-blocks",
  applies: ({ mounting }) => (mounting === "table" ? { handsAwayMm: HANDS_AWAY_MM } : undefined),
});
