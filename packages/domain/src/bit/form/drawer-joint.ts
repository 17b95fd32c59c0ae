import { lengthMm } from "../../quantity/field.ts";
import { line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { mustLeaveNeck, mustStayUnder } from "./fit.ts";
import { thickestJoint } from "./usual-cut.ts";

export const drawerJoint = defineForm({
  kind: "drawer-joint",
  title: "Drawer-joint",
  meaning:
    "A wide part at the tip over a narrower one: hooks that interlock the fronts and sides of drawers, all cut at one height.",
  alsoCalled: ["drawer lock joint", "corner"],
  suits: ["joint", "edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter: that of the part at the tip.", 20, 60),
    cuttingLengthMm: lengthMm("Length of the cutting edges, both parts together.", 6, 40),
    stepMm: lengthMm("How far the part at the tip stands out past the other.", 1, 15),
    stepHeightMm: lengthMm("Height of the part at the tip, along the axis.", 1, 30),
  },
  faults: ({ diameterMm, cuttingLengthMm, stepMm, stepHeightMm }) => [
    ...mustStayUnder("/stepHeightMm", stepHeightMm, cuttingLengthMm),
    ...mustLeaveNeck("/stepMm", stepMm, diameterMm),
  ],
  outline: ({ diameterMm, cuttingLengthMm, stepMm, stepHeightMm }) => [
    line(0, stepHeightMm, diameterMm / 2),
    line(stepHeightMm, cuttingLengthMm, diameterMm / 2 - stepMm),
  ],
  pilotRadiusMm: () => undefined,
  usualCut: ({ cuttingLengthMm }) => thickestJoint(cuttingLengthMm / 2),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "never",
  isForTableOnly: true,
  middleMm: ({ cuttingLengthMm }) => cuttingLengthMm / 2,
  wingFillRatio: 0.5,
});
