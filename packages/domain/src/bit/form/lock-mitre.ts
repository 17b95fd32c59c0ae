import { lengthMm } from "../../quantity/field.ts";
import { line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";
import { thickestJoint } from "./usual-cut.ts";

export const lockMitre = defineForm({
  kind: "lock-mitre",
  title: "Lock-mitre",
  meaning:
    "A 45° edge with a locking step at its middle: one height cuts both halves of a corner, one lying and one standing.",
  alsoCalled: ["miter", "locking", "corner"],
  suits: ["joint", "edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 25, 90),
    cuttingLengthMm: lengthMm(
      "Length of the cutting edges along the axis: the thickest stock it joins.",
      8,
      40,
    ),
    lockDepthMm: lengthMm(
      "How far along the axis the lock reaches from its middle, to either side; its square step is four times as wide.",
      0.5,
      6,
    ),
  },
  faults: ({ diameterMm, cuttingLengthMm, lockDepthMm }) => [
    ...mustStayUnder("/cuttingLengthMm", cuttingLengthMm, diameterMm / 2),
    ...mustStayUnder("/lockDepthMm", lockDepthMm, cuttingLengthMm / 4),
  ],
  outline: ({ diameterMm, cuttingLengthMm, lockDepthMm }) => {
    const rimMm = diameterMm / 2;
    const tipMm = rimMm - cuttingLengthMm;
    const middleMm = cuttingLengthMm / 2;
    const lockFromMm = middleMm - lockDepthMm;
    const lockToMm = middleMm + lockDepthMm;
    // Turned half way round its middle the outline is itself: that is what makes two halves fit.
    return [
      line(0, lockFromMm, tipMm, tipMm + lockFromMm),
      line(lockFromMm, middleMm, tipMm + lockFromMm, tipMm + middleMm - 2 * lockDepthMm),
      line(middleMm, lockToMm, tipMm + middleMm + 2 * lockDepthMm, tipMm + lockToMm),
      line(lockToMm, cuttingLengthMm, tipMm + lockToMm, rimMm),
    ];
  },
  pilotRadiusMm: () => undefined,
  usualCut: ({ cuttingLengthMm }) => thickestJoint(cuttingLengthMm / 2),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "never",
  isForTableOnly: true,
  middleMm: ({ cuttingLengthMm }) => cuttingLengthMm / 2,
  wingFillRatio: 0.5,
});
