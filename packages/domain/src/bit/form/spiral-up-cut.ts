import { defineForm } from "./define.ts";
import { parallelFaults, parallelOutline, spiralDimensions } from "./parallel.ts";
import { lightGroove } from "./usual-cut.ts";

export const spiralUpCut = defineForm({
  kind: "spiral-up-cut",
  title: "Spiral, up-cut",
  meaning:
    "Spiral edges that lift the chips toward the router: clean at the bottom, frays the face it enters.",
  alsoCalled: ["upcut", "upspiral", "helical"],
  suits: ["groove", "rabbet", "edge", "surface", "inlay"],
  dimensions: spiralDimensions,
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  usualCut: ({ diameterMm, cuttingLengthMm }) => lightGroove(diameterMm, cuttingLengthMm),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "some",
  wingFillRatio: 0.55,
});
