import type { Fault } from "../../quantity/fault.ts";
import { lengthMm, optionalLengthMm } from "../../quantity/field.ts";
import { rangeFaults } from "../../quantity/range.ts";
import { type Outline, type Segment, segmentSpanMm } from "../outline.ts";
import { defineForm, segments } from "./define.ts";
import { MEASURED_SLACK_MM } from "./fit.ts";
import { givenOutline, givenOutlineFaults } from "./given-outline.ts";
import { GIVEN_OUTLINE_RANGES, GIVEN_SEGMENT_RANGES, type GivenSegment } from "./given-segment.ts";
import { pilotFaults } from "./pilot.ts";
import { usualCutByShape } from "./usual-cut.ts";

export const custom = defineForm({
  kind: "custom",
  title: "Custom outline",
  meaning: "Any outline, given from the tip as straight and circular segments.",
  alsoCalled: ["special", "shaped", "profile"],
  suits: ["edge", "joint", "rabbet", "groove", "surface"],
  dimensions: {
    diameterMm: lengthMm(
      "Largest cutting diameter; the outline must reach it and not pass it.",
      GIVEN_OUTLINE_RANGES.diameterMm.min,
      GIVEN_OUTLINE_RANGES.diameterMm.max,
    ),
    startRadiusMm: lengthMm("Radius at the tip; 0 if the edges meet in a point.", 0, 60),
    segments: segments(
      "The outline from the tip upward; each segment starts where the one before ended.",
      GIVEN_OUTLINE_RANGES.segments.max,
    ),
    pilotDiameterMm: optionalLengthMm(
      "Diameter of a pilot that runs on the work; parallel segments of this diameter are the pilot and do not cut. Default: none.",
      2,
      70,
    ),
  },
  faults: ({ diameterMm, startRadiusMm, segments: given, pilotDiameterMm }) => {
    const single = given.flatMap((segment, index) => rangesOf(segment, `/segments/${index}`));
    if (single.length > 0) return single;
    const faults = givenOutlineFaults(startRadiusMm, given);
    if (faults.length > 0) return faults;
    const outline = givenOutline(startRadiusMm, given);
    const widestMm = 2 * Math.max(...outline.map((segment) => segmentSpanMm(segment).greatestMm));
    const pilot = pilotFaults(diameterMm, pilotDiameterMm);
    if (Math.abs(widestMm - diameterMm) > MEASURED_SLACK_MM) {
      const values = { given: diameterMm, want: widestMm };
      return [...pilot, { pointer: "/diameterMm", code: "diameter-not-outline", values }];
    }
    return pilot.length > 0 ? pilot : insidePilotFaults(outline, pilotDiameterMm);
  },
  outline: ({ startRadiusMm, segments: given, pilotDiameterMm }): Outline =>
    givenOutline(startRadiusMm, given).map((segment) =>
      isPilot(segment, pilotDiameterMm) ? { ...segment, role: "pilot" } : segment,
    ),
  pilotRadiusMm: ({ pilotDiameterMm }) => (pilotDiameterMm === undefined ? undefined : pilotDiameterMm / 2),
  usualCut: ({ diameterMm, pilotDiameterMm }, outline) =>
    usualCutByShape(outline, diameterMm, pilotDiameterMm),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "some",
  wingFillRatio: 0.5,
});

function rangesOf(segment: GivenSegment, pointer: string): Fault[] {
  return [
    ...rangeFaults(`${pointer}/toMm`, segment.toMm, GIVEN_SEGMENT_RANGES.toMm),
    ...rangeFaults(`${pointer}/radiusMm`, segment.radiusMm, GIVEN_SEGMENT_RANGES.radiusMm),
    ...(segment.kind === "arc"
      ? rangeFaults(`${pointer}/arcRadiusMm`, segment.arcRadiusMm, GIVEN_SEGMENT_RANGES.arcRadiusMm)
      : []),
  ];
}

/** The work runs on the pilot, so nothing nearer to the axis can cut: it would be a slip in the outline. */
function insidePilotFaults(outline: Outline, pilotDiameterMm: number | undefined): Fault[] {
  if (pilotDiameterMm === undefined) return [];
  const leastMm = Math.min(...outline.map((segment) => segmentSpanMm(segment).leastMm));
  if (leastMm >= pilotDiameterMm / 2 - MEASURED_SLACK_MM) return [];
  const values = { given: pilotDiameterMm, max: 2 * leastMm };
  return [{ pointer: "/pilotDiameterMm", code: "out-of-range", values }];
}

function isPilot(segment: Segment, pilotDiameterMm: number | undefined): boolean {
  if (pilotDiameterMm === undefined) return false;
  const { leastMm, greatestMm } = segmentSpanMm(segment);
  return (
    Math.max(Math.abs(leastMm - pilotDiameterMm / 2), Math.abs(greatestMm - pilotDiameterMm / 2)) <=
    MEASURED_SLACK_MM
  );
}
