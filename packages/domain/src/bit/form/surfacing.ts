import { defineForm } from "./define.ts";
import { parallelDimensions, parallelFaults, parallelOutline } from "./parallel.ts";

export const surfacing = defineForm({
  kind: "surfacing",
  title: "Surfacing",
  meaning: "A wide flat cutter: planes slabs and beds in overlapping rows.",
  dimensions: parallelDimensions,
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.45,
});
