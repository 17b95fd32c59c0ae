import { lengthMm } from "../../quantity/field.ts";
import { line } from "../outline.ts";
import { pilotBetween, pilotRadiusBetweenMm, roleBetween } from "./between.ts";
import { defineForm } from "./define.ts";
import { mustLeaveNeck, mustStayUnder } from "./fit.ts";
import { thickestJoint } from "./usual-cut.ts";

export const groove = defineForm({
  kind: "groove",
  title: "Groove",
  meaning:
    "One cutter between two narrower parts: grooves an edge for a tongue; made as a pair with a tongue bit.",
  alsoCalled: ["tongue grooving", "matched"],
  suits: ["joint", "edge"],
  dimensions: {
    diameterMm: lengthMm("Cutting diameter of the groove cutter.", 15, 80),
    grooveWidthMm: lengthMm("Width of the groove: the thickness of the cutter.", 1, 20),
    grooveDepthMm: lengthMm("Depth of the groove, from the edge.", 1, 25),
    cuttingLengthMm: lengthMm("Length over the cutter and the parts beside it, along the axis.", 6, 60),
    pilot: pilotBetween,
  },
  faults: ({ diameterMm, grooveWidthMm, grooveDepthMm, cuttingLengthMm }) => [
    ...mustStayUnder("/grooveWidthMm", grooveWidthMm, cuttingLengthMm),
    ...mustLeaveNeck("/grooveDepthMm", grooveDepthMm, diameterMm),
  ],
  outline: ({ diameterMm, grooveWidthMm, grooveDepthMm, cuttingLengthMm, pilot }) => {
    const rimMm = diameterMm / 2;
    const besideMm = rimMm - grooveDepthMm;
    const fromMm = (cuttingLengthMm - grooveWidthMm) / 2;
    const toMm = fromMm + grooveWidthMm;
    return [
      line(0, fromMm, besideMm, besideMm, roleBetween(pilot)),
      line(fromMm, toMm, rimMm),
      line(toMm, cuttingLengthMm, besideMm, besideMm, roleBetween(pilot)),
    ];
  },
  pilotRadiusMm: ({ pilot, diameterMm, grooveDepthMm }) =>
    pilotRadiusBetweenMm(pilot, diameterMm, grooveDepthMm),
  usualCut: ({ cuttingLengthMm }) => thickestJoint(cuttingLengthMm / 2),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "never",
  middleMm: ({ cuttingLengthMm }) => cuttingLengthMm / 2,
  wingFillRatio: 0.55,
});
