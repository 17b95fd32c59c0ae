import { line } from "../outline.ts";
import { angleDeg, defineForm, lengthMm } from "./define.ts";
import { slopeFaults } from "./fit.ts";

export const vGroove = defineForm({
  kind: "v-groove",
  title: "V-groove",
  meaning: "Edges that meet in a point: V-shaped grooves and lettering.",
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 3, 80),
    angleDeg: angleDeg("Whole angle of the groove; 90 is square.", 10, 160),
  },
  faults: ({ diameterMm, angleDeg: wholeDeg }) =>
    slopeFaults("/angleDeg", wholeDeg, wholeDeg / 2, diameterMm / 2),
  outline: ({ diameterMm, angleDeg: wholeDeg }) => {
    const radiusMm = diameterMm / 2;
    return [line(0, radiusMm / Math.tan((wholeDeg * Math.PI) / 360), 0, radiusMm)];
  },
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.5,
});
