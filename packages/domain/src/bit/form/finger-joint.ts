import { count, lengthMm, optionalAngleDeg } from "../../quantity/field.ts";
import { line, type Segment } from "../outline.ts";
import { defineForm } from "./define.ts";
import { mustLeaveNeck, mustStayUnder } from "./fit.ts";
import { thickestJoint } from "./usual-cut.ts";

export const fingerJoint = defineForm({
  kind: "finger-joint",
  title: "Finger-joint",
  meaning: "Fingers and gaps of equal height: joins boards edge to edge or end to end.",
  alsoCalled: ["comb", "box", "glue joint"],
  suits: ["joint", "edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 20, 80),
    fingers: count("How many cutters it has: the gaps it leaves in the wood.", 2, 12),
    fingerHeightMm: lengthMm("Height of one cutter, and of one gap between two, at half their depth.", 1, 10),
    fingerDepthMm: lengthMm("Depth of the fingers, square to the axis.", 2, 25),
    taperDeg: optionalAngleDeg(
      "Slope of each side of a finger against square; it lets the joint wedge tight. Default: square sides.",
      1,
      25,
    ),
  },
  faults: ({ diameterMm, fingerHeightMm, fingerDepthMm, taperDeg = 0 }) => [
    ...mustLeaveNeck("/fingerDepthMm", fingerDepthMm, diameterMm),
    ...(taperDeg === 0
      ? []
      : mustStayUnder(
          "/taperDeg",
          taperDeg,
          // At this slope the two sides of a finger meet in a point.
          (Math.atan(fingerHeightMm / fingerDepthMm) * 180) / Math.PI,
        )),
  ],
  outline: ({ diameterMm, fingers, fingerHeightMm, fingerDepthMm, taperDeg = 0 }) => {
    const rimMm = diameterMm / 2;
    const gapMm = rimMm - fingerDepthMm;
    const flankMm = fingerDepthMm * Math.tan((taperDeg * Math.PI) / 180);
    const parts = 2 * fingers - 1;
    const sideFromMm = (part: number) => part * fingerHeightMm - flankMm / 2;
    const sideToMm = (part: number) => part * fingerHeightMm + flankMm / 2;
    return Array.from({ length: parts }, (_, part): Segment[] => {
      const [ownMm, otherMm] = part % 2 === 0 ? [rimMm, gapMm] : [gapMm, rimMm];
      const fromMm = part === 0 ? 0 : sideToMm(part);
      if (part === parts - 1) return [line(fromMm, parts * fingerHeightMm, ownMm)];
      const next = part + 1;
      const flat = line(fromMm, sideFromMm(next), ownMm);
      return flankMm === 0 ? [flat] : [flat, line(sideFromMm(next), sideToMm(next), ownMm, otherMm)];
    }).flat();
  },
  pilotRadiusMm: () => undefined,
  usualCut: ({ fingers, fingerHeightMm }) => thickestJoint(((2 * fingers - 1) * fingerHeightMm) / 2),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "never",
  isForTableOnly: true,
  middleMm: ({ fingers, fingerHeightMm }) => ((2 * fingers - 1) * fingerHeightMm) / 2,
  wingFillRatio: 0.5,
});
