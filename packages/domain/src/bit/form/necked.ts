import type { Fault } from "../../quantity/fault.ts";
import { lengthMm } from "../../quantity/field.ts";
import { line, type Outline } from "../outline.ts";
import { mustStayUnder } from "./fit.ts";

/** What a wide head on a cutting neck is described by. */
export const neckedDimensions = {
  diameterMm: lengthMm("Cutting diameter of the head.", 5, 60),
  headHeightMm: lengthMm("Height of the head, from the tip.", 1, 25),
  neckDiameterMm: lengthMm("Cutting diameter of the neck: the width of the slot's mouth.", 2, 40),
  cuttingLengthMm: lengthMm("Length of the cutting edges from the tip, head and neck together.", 3, 60),
};

type NeckedDimensions = { readonly [Name in keyof typeof neckedDimensions]: number };

/** The head, then the neck. */
export function neckedOutline(bit: NeckedDimensions): Outline {
  const { diameterMm, headHeightMm, neckDiameterMm, cuttingLengthMm } = bit;
  return [line(0, headHeightMm, diameterMm / 2), line(headHeightMm, cuttingLengthMm, neckDiameterMm / 2)];
}

/** The neck must be thinner than the head, and there must be some. */
export function neckedFaults({
  diameterMm,
  headHeightMm,
  neckDiameterMm,
  cuttingLengthMm,
}: NeckedDimensions): Fault[] {
  return [
    ...mustStayUnder("/neckDiameterMm", neckDiameterMm, diameterMm),
    ...mustStayUnder("/headHeightMm", headHeightMm, cuttingLengthMm),
  ];
}
