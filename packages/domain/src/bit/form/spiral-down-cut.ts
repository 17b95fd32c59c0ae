import { defineForm } from "./define.ts";
import { parallelDimensions, parallelFaults, parallelOutline } from "./parallel.ts";

export const spiralDownCut = defineForm({
  kind: "spiral-down-cut",
  title: "Spiral, down-cut",
  meaning: "Spiral edges that press the chips into the cut: clean at the face it enters, slow to clear.",
  dimensions: parallelDimensions,
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.55,
});
