import { defineForm } from "./define.ts";
import { parallelDimensions, parallelFaults, parallelOutline } from "./parallel.ts";
import { lightGroove } from "./usual-cut.ts";

export const straight = defineForm({
  kind: "straight",
  title: "Straight",
  meaning: "Parallel cutting edges: grooves, dadoes, rabbets and square edges.",
  alsoCalled: ["plunge", "dado", "trenching", "groove"],
  suits: ["groove", "rabbet", "edge", "surface", "inlay"],
  dimensions: parallelDimensions,
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  usualCut: ({ diameterMm, cuttingLengthMm }) => lightGroove(diameterMm, cuttingLengthMm),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "some",
  wingFillRatio: 0.42,
});
