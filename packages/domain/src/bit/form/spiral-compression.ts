import { optionalLengthMm } from "../../quantity/field.ts";
import { defineForm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";
import { parallelOutline, spiralDimensions } from "./parallel.ts";
import { lightGroove } from "./usual-cut.ts";

export const spiralCompression = defineForm({
  kind: "spiral-compression",
  title: "Spiral, compression",
  meaning: "Up-cut at the tip and down-cut above: both faces of a sheet stay clean in a through cut.",
  alsoCalled: ["helical", "up down cut"],
  suits: ["groove", "rabbet", "edge", "surface", "inlay"],
  dimensions: {
    ...spiralDimensions,
    upCutLengthMm: optionalLengthMm(
      "Length of the up-cut part at the tip: a pass no deeper than this frays the face it enters. Absent: not known.",
      1,
      60,
    ),
  },
  faults: ({ cuttingLengthMm, upCutLengthMm }) =>
    upCutLengthMm === undefined ? [] : mustStayUnder("/upCutLengthMm", upCutLengthMm, cuttingLengthMm),
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  usualCut: ({ diameterMm, cuttingLengthMm }) => lightGroove(diameterMm, cuttingLengthMm),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "some",
  wingFillRatio: 0.55,
});
