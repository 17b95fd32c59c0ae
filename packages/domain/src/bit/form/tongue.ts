import { lengthMm } from "../../quantity/field.ts";
import { line } from "../outline.ts";
import { pilotBetween, pilotRadiusBetweenMm, roleBetween } from "./between.ts";
import { defineForm } from "./define.ts";
import { mustLeaveNeck, mustStayUnder } from "./fit.ts";
import { thickestJoint } from "./usual-cut.ts";

export const tongue = defineForm({
  kind: "tongue",
  title: "Tongue",
  meaning: "Two cutters with a gap between: leaves a tongue along an edge; made as a pair with a groove bit.",
  alsoCalled: ["tongue groove", "matched"],
  suits: ["joint", "edge"],
  dimensions: {
    diameterMm: lengthMm("Cutting diameter of the two cutters.", 15, 80),
    tongueThicknessMm: lengthMm("Thickness of the tongue: the gap between the cutters.", 1, 20),
    tongueLengthMm: lengthMm("Length of the tongue, from shoulder to end.", 1, 25),
    cuttingLengthMm: lengthMm("Length over both cutters, along the axis.", 6, 60),
    pilot: pilotBetween,
  },
  faults: ({ diameterMm, tongueThicknessMm, tongueLengthMm, cuttingLengthMm }) => [
    ...mustStayUnder("/tongueThicknessMm", tongueThicknessMm, cuttingLengthMm),
    ...mustLeaveNeck("/tongueLengthMm", tongueLengthMm, diameterMm),
  ],
  outline: ({ diameterMm, tongueThicknessMm, tongueLengthMm, cuttingLengthMm, pilot }) => {
    const rimMm = diameterMm / 2;
    const gapRadiusMm = rimMm - tongueLengthMm;
    const gapFromMm = (cuttingLengthMm - tongueThicknessMm) / 2;
    const gapToMm = gapFromMm + tongueThicknessMm;
    return [
      line(0, gapFromMm, rimMm),
      line(gapFromMm, gapToMm, gapRadiusMm, gapRadiusMm, roleBetween(pilot)),
      line(gapToMm, cuttingLengthMm, rimMm),
    ];
  },
  pilotRadiusMm: ({ pilot, diameterMm, tongueLengthMm }) =>
    pilotRadiusBetweenMm(pilot, diameterMm, tongueLengthMm),
  usualCut: ({ cuttingLengthMm }) => thickestJoint(cuttingLengthMm / 2),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "never",
  isForTableOnly: true,
  middleMm: ({ cuttingLengthMm }) => cuttingLengthMm / 2,
  wingFillRatio: 0.55,
});
