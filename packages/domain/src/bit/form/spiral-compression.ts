import { defineForm } from "./define.ts";
import { parallelDimensions, parallelFaults, parallelOutline } from "./parallel.ts";

export const spiralCompression = defineForm({
  kind: "spiral-compression",
  title: "Spiral, compression",
  meaning: "Up-cut at the tip and down-cut above: both faces of a sheet stay clean in a through cut.",
  dimensions: parallelDimensions,
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.55,
});
