import { defineKind } from "../store/kind.ts";
import { BitSchema } from "./schema.ts";

export const bitKind = defineKind({
  type: "bit",
  noun: "bit",
  idPrefix: "bit",
  path: "/v1/bits",
  tag: { name: "bits", description: "The rack of router bits." },
  schema: BitSchema,
  table: "bits",
  queryColumns: {
    /** A lasting number that the word index refers to, and that pages of a search go on from. */
    number: "row-number",
    /** The short number that the shop knows it by, on the bit itself and its label. */
    shopNumber: "assigned-number",
    words: "text",
    facets: "text",
    ceilingRpm: "real",
    usedMinutes: "real",
    reorderReason: { optional: "text" },
    guideRpm: "real",
    /** How wide a groove it takes the wood out of before another bit finishes it, if it is at hand. */
    wastesGrooveMm: { optional: "real" },
  },
});
