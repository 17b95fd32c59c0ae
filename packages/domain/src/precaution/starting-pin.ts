import { definePrecaution } from "./define.ts";

/** A curved edge has no fence to start from. Source: common practice. */
export const startingPin = definePrecaution({
  code: "starting-pin",
  applies: ({ guide }) => (guide === "bearing-and-pin" ? {} : undefined),
});
