import { line } from "../outline.ts";
import { defineForm, lengthMm } from "./define.ts";

export const straight = defineForm({
  kind: "straight",
  title: "Straight",
  meaning: "Parallel cutting edges: grooves, dadoes, rabbets and square edges.",
  dimensions: {
    diameterMm: lengthMm("Cutting diameter.", 1, 80),
    cuttingLengthMm: lengthMm("Length of the cutting edges from the tip.", 2, 120),
  },
  faults: () => [],
  outline: ({ diameterMm, cuttingLengthMm }) => [line(0, cuttingLengthMm, diameterMm / 2)],
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.42,
});
