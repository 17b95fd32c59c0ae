import { line, type Segment } from "../outline.ts";
import { count, defineForm, lengthMm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";

export const fingerJoint = defineForm({
  kind: "finger-joint",
  title: "Finger-joint",
  meaning: "Fingers and gaps of equal height: joins boards edge to edge or end to end.",
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 20, 80),
    fingers: count("How many fingers it cuts.", 2, 12),
    fingerHeightMm: lengthMm("Height of one finger, and of one gap.", 1, 10),
    fingerDepthMm: lengthMm("Depth of the fingers.", 2, 25),
  },
  faults: ({ diameterMm, fingerDepthMm }) => mustStayUnder("/fingerDepthMm", fingerDepthMm, diameterMm / 2),
  outline: ({ diameterMm, fingers, fingerHeightMm, fingerDepthMm }) =>
    Array.from({ length: 2 * fingers - 1 }, (_, index): Segment => {
      const radiusMm = index % 2 === 0 ? diameterMm / 2 : diameterMm / 2 - fingerDepthMm;
      return line(index * fingerHeightMm, (index + 1) * fingerHeightMm, radiusMm);
    }),
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.5,
});
