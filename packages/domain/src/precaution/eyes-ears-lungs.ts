import { definePrecaution } from "./define.ts";

/** Protection that every router cut asks for. Source: common practice. */
export const eyesEarsLungs = definePrecaution({
  code: "eyes-ears-lungs",
  applies: () => ({}),
});
