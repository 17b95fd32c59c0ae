import { type FieldsOf, optionalChoice, optionalCount, optionalLengthMm } from "../quantity/field.ts";
import { workThicknessMm } from "./kind/work-fields.ts";

/** The fields of the piece that is held and fed: `edges` say what is cut of it. */
export const WORK_FIELDS = {
  lengthMm: optionalLengthMm("Length of the piece, along the grain.", 10, 10_000),
  widthMm: optionalLengthMm("Width of the piece, across the grain.", 5, 3000),
  thicknessMm: workThicknessMm,
  count: optionalCount("How many alike are cut at each setting. Default: 1.", 1, 10_000),
  faceDown: optionalChoice("Which face lies on the table or the bench.", ["best", "other"]),
};

/** The piece of wood a cut is made in. */
export type Work = FieldsOf<typeof WORK_FIELDS>;
