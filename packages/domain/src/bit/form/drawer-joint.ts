import { line } from "../outline.ts";
import { defineForm, lengthMm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";

export const drawerJoint = defineForm({
  kind: "drawer-joint",
  title: "Drawer-joint",
  meaning: "Two steps that interlock: fronts and sides of drawers, cut at one height.",
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 20, 60),
    cuttingLengthMm: lengthMm("Length of the cutting edges.", 6, 40),
    stepMm: lengthMm("Depth of the step between the two parts.", 1, 15),
    stepHeightMm: lengthMm("Height of the part at the tip.", 1, 30),
  },
  faults: ({ diameterMm, cuttingLengthMm, stepMm, stepHeightMm }) => [
    ...mustStayUnder("/stepHeightMm", stepHeightMm, cuttingLengthMm),
    ...mustStayUnder("/stepMm", stepMm, diameterMm / 2),
  ],
  outline: ({ diameterMm, cuttingLengthMm, stepMm, stepHeightMm }) => [
    line(0, stepHeightMm, diameterMm / 2),
    line(stepHeightMm, cuttingLengthMm, diameterMm / 2 - stepMm),
  ],
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.5,
});
