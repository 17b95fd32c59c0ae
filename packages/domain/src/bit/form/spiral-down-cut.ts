import { defineForm } from "./define.ts";
import { parallelFaults, parallelOutline, spiralDimensions } from "./parallel.ts";
import { lightGroove } from "./usual-cut.ts";

export const spiralDownCut = defineForm({
  kind: "spiral-down-cut",
  title: "Spiral, down-cut",
  meaning: "Spiral edges that press the chips into the cut: clean at the face it enters, slow to clear.",
  alsoCalled: ["downcut", "downspiral", "helical"],
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
