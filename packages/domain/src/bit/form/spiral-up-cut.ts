import { defineForm } from "./define.ts";
import { parallelFaults, parallelOutline, spiralDimensions } from "./parallel.ts";

export const spiralUpCut = defineForm({
  kind: "spiral-up-cut",
  title: "Spiral, up-cut",
  meaning:
    "Spiral edges that lift the chips toward the router: clean at the bottom, frays the face it enters.",
  dimensions: spiralDimensions,
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.55,
});
