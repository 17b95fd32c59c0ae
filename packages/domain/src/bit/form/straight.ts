import { defineForm } from "./define.ts";
import { parallelDimensions, parallelFaults, parallelOutline } from "./parallel.ts";

export const straight = defineForm({
  kind: "straight",
  title: "Straight",
  meaning: "Parallel cutting edges: grooves, dadoes, rabbets and square edges.",
  dimensions: parallelDimensions,
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.42,
});
