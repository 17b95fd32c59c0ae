import { definePrecaution } from "./define.ts";

/** A large bit can strike the insert or the base. Source: common practice. */
export const turnByHand = definePrecaution({
  code: "turn-by-hand",
  applies: ({ isHeavy }) => (isHeavy ? {} : undefined),
});
