import { line } from "../outline.ts";
import { angleDeg, defineForm, lengthMm } from "./define.ts";

export const vGroove = defineForm({
  kind: "v-groove",
  title: "V-groove",
  meaning: "Edges that meet in a point: V-shaped grooves and lettering.",
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 3, 80),
    angleDeg: angleDeg("Whole angle of the groove; 90 is square.", 20, 160),
  },
  faults: () => [],
  outline: ({ diameterMm, angleDeg: wholeAngleDeg }) => {
    const radiusMm = diameterMm / 2;
    return [line(0, radiusMm / Math.tan((wholeAngleDeg * Math.PI) / 360), 0, radiusMm)];
  },
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.5,
});
