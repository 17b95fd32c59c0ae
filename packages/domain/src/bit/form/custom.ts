import type { Fault } from "../../quantity/fault.ts";
import { rangeFaults } from "../../quantity/range.ts";
import { arc, line, type Outline, type Segment } from "../outline.ts";
import { defineForm, lengthMm, optionalLengthMm, segments } from "./define.ts";
import { mustStayUnder } from "./fit.ts";
import { GIVEN_SEGMENT_RANGES, type GivenSegment } from "./given-segment.ts";

/** Two figures of one outline that should be the same may differ by this, mm: both were measured. */
const MEASURED_SLACK_MM = 0.05;

export const custom = defineForm({
  kind: "custom",
  title: "Custom outline",
  meaning: "Any outline, given from the tip as straight and circular segments.",
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter; the outline must reach it and not pass it.", 1, 120),
    startRadiusMm: lengthMm("Radius at the tip; 0 where the edges meet in a point.", 0, 60),
    segments: segments(
      "The outline from the tip upward; each segment starts where the one before ended.",
      60,
    ),
    pilotDiameterMm: optionalLengthMm("Diameter of a pilot that runs on the work. Left out: none.", 2, 70),
  },
  faults: ({ diameterMm, startRadiusMm, segments: given, pilotDiameterMm }) => {
    const shape = given.flatMap((segment, index) => rangesOf(segment, `/segments/${index}`));
    if (shape.length > 0) return shape;
    const turning = walk(startRadiusMm, given).flatMap(({ segment }, index) =>
      segment === "turns-back"
        ? [{ pointer: `/segments/${index}`, code: "outline-turns-back" as const, values: {} }]
        : [],
    );
    if (turning.length > 0) return turning;
    const widestMm = 2 * Math.max(startRadiusMm, ...given.map(({ radiusMm }) => radiusMm));
    const pilot =
      pilotDiameterMm === undefined ? [] : mustStayUnder("/pilotDiameterMm", pilotDiameterMm, diameterMm);
    if (Math.abs(widestMm - diameterMm) <= MEASURED_SLACK_MM) return pilot;
    return [
      ...pilot,
      { pointer: "/diameterMm", code: "diameter-not-outline", values: { given: diameterMm, want: widestMm } },
    ];
  },
  outline: ({ startRadiusMm, segments: given }): Outline =>
    walk(startRadiusMm, given).flatMap(({ segment }) =>
      segment === "step" || segment === "turns-back" ? [] : [segment],
    ),
  pilotRadiusMm: ({ pilotDiameterMm }) => (pilotDiameterMm === undefined ? undefined : pilotDiameterMm / 2),
  wingFillRatio: 0.5,
});

type Walked = { readonly segment: Segment | "step" | "turns-back" };

function walk(startRadiusMm: number, given: readonly GivenSegment[]): Walked[] {
  let fromMm = 0;
  let fromRadiusMm = startRadiusMm;
  return given.map((each) => {
    const segment = placed(each, fromMm, fromRadiusMm);
    fromMm = each.toMm;
    fromRadiusMm = each.radiusMm;
    return { segment };
  });
}

function placed(given: GivenSegment, fromMm: number, fromRadiusMm: number): Walked["segment"] {
  const { toMm, radiusMm } = given;
  if (toMm < fromMm) return "turns-back";
  if (given.kind === "line") return toMm === fromMm ? "step" : line(fromMm, toMm, fromRadiusMm, radiusMm);
  return arcBetween(given, fromMm, fromRadiusMm) ?? "turns-back";
}

/** The arc through both ends, if it runs upward all the way: the radius must have one value at each distance. */
function arcBetween(
  { toMm, radiusMm, arcRadiusMm, bulge }: Extract<GivenSegment, { kind: "arc" }>,
  fromMm: number,
  fromRadiusMm: number,
): Segment | undefined {
  const alongMm = toMm - fromMm;
  const outMm = radiusMm - fromRadiusMm;
  const chordMm = Math.hypot(alongMm, outMm);
  if (alongMm <= 0 || chordMm > 2 * arcRadiusMm) return undefined;
  const side = bulge === "outward" ? 1 : -1;
  const sagittaArmMm = Math.sqrt(arcRadiusMm * arcRadiusMm - (chordMm * chordMm) / 4);
  // The centre lies on the chord's perpendicular, on the side away from the bulge.
  const centreMm = (fromMm + toMm) / 2 + (side * sagittaArmMm * outMm) / chordMm;
  const centreRadiusMm = (fromRadiusMm + radiusMm) / 2 - (side * sagittaArmMm * alongMm) / chordMm;
  const lowestMm = side * Math.min(side * fromRadiusMm, side * radiusMm);
  if (side * (lowestMm - centreRadiusMm) < -1e-9) return undefined;
  return arc(fromMm, toMm, { centreMm, centreRadiusMm, arcRadiusMm, side });
}

function rangesOf(segment: GivenSegment, pointer: string): Fault[] {
  return [
    ...rangeFaults(`${pointer}/toMm`, segment.toMm, GIVEN_SEGMENT_RANGES.toMm),
    ...rangeFaults(`${pointer}/radiusMm`, segment.radiusMm, GIVEN_SEGMENT_RANGES.radiusMm),
    ...(segment.kind === "arc"
      ? rangeFaults(`${pointer}/arcRadiusMm`, segment.arcRadiusMm, GIVEN_SEGMENT_RANGES.arcRadiusMm)
      : []),
  ];
}
