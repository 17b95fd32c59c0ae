import { defineForm } from "./define.ts";
import { parallelDimensions, parallelFaults, parallelOutline } from "./parallel.ts";

export const spiralUpCut = defineForm({
  kind: "spiral-up-cut",
  title: "Spiral, up-cut",
  meaning:
    "Spiral edges that lift the chips toward the router: clean at the bottom, frays the face it enters.",
  dimensions: parallelDimensions,
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.55,
});
