import { definePrecaution } from "./define.ts";

/** Heavy bits shake loose. Source: common practice. */
export const checkColletAgain = definePrecaution({
  code: "check-collet-again",
  applies: ({ isHeavy, solid }) => (isHeavy ? { massG: solid.massG } : undefined),
});
