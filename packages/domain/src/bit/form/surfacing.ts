import { defineForm, lengthMm } from "./define.ts";
import { parallelFaults, parallelOutline } from "./parallel.ts";

export const surfacing = defineForm({
  kind: "surfacing",
  title: "Surfacing",
  meaning: "A wide flat cutter with short edges: planes slabs and beds in overlapping rows.",
  dimensions: {
    diameterMm: lengthMm("Cutting diameter.", 16, 100),
    cuttingLengthMm: lengthMm("Length of the cutting edges from the tip.", 2, 30),
  },
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.45,
});
