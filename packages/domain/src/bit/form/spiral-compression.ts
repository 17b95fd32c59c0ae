import { defineForm, optionalLengthMm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";
import { parallelOutline, spiralDimensions } from "./parallel.ts";

export const spiralCompression = defineForm({
  kind: "spiral-compression",
  title: "Spiral, compression",
  meaning: "Up-cut at the tip and down-cut above: both faces of a sheet stay clean in a through cut.",
  dimensions: {
    ...spiralDimensions,
    upCutLengthMm: optionalLengthMm(
      "Length of the up-cut part at the tip: a pass no deeper than this frays the face it enters. Left out: not known.",
      1,
      60,
    ),
  },
  faults: ({ cuttingLengthMm, upCutLengthMm }) =>
    upCutLengthMm === undefined ? [] : mustStayUnder("/upCutLengthMm", upCutLengthMm, cuttingLengthMm),
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.55,
});
