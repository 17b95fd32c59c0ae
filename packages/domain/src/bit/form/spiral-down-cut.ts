import { defineForm } from "./define.ts";
import { parallelFaults, parallelOutline, spiralDimensions } from "./parallel.ts";

export const spiralDownCut = defineForm({
  kind: "spiral-down-cut",
  title: "Spiral, down-cut",
  meaning: "Spiral edges that press the chips into the cut: clean at the face it enters, slow to clear.",
  dimensions: spiralDimensions,
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.55,
});
