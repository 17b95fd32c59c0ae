import type { Fault } from "../../quantity/fault.ts";
import { arc, line, type Outline, radiusOnSegmentMm, type Segment, segmentSpanMm } from "../outline.ts";
import type { GivenSegment } from "./given-segment.ts";

/** What one given segment comes to: a piece of outline, a step square to the axis, or neither. */
type Placed = Segment | "step" | "turns-back";

type GivenArc = Extract<GivenSegment, { kind: "arc" }>;

/** How far an arc may seem to turn back before it does, mm: its ends are typed to hundredths. */
const TYPED_SLACK_MM = 0.02;

/** Rounding of a radius that is meant to be 0, mm. */
const AXIS_SLACK_MM = 1e-9;

/** The outline that segments given from the tip upward come to. Those with faults are skipped. */
export function givenOutline(startRadiusMm: number, given: readonly GivenSegment[]): Outline {
  return placedSegments(startRadiusMm, given).filter((placed) => typeof placed === "object");
}

/** Whatever keeps segments from being an outline: they turn back, pass through the axis, or have no length. */
export function givenOutlineFaults(startRadiusMm: number, given: readonly GivenSegment[]): Fault[] {
  const faults = placedSegments(startRadiusMm, given).flatMap((placed, index): Fault[] => {
    const pointer = `/segments/${index}`;
    if (placed === "step") return [];
    if (placed === "turns-back") return [{ pointer, code: "outline-turns-back", values: {} }];
    return segmentSpanMm(placed).leastMm < -AXIS_SLACK_MM ? [throughAxis(pointer, placed)] : [];
  });
  if (faults.length > 0) return faults;
  const lengthMm = given.at(-1)?.toMm ?? 0;
  if (lengthMm > 0) return [];
  const pointer = `/segments/${given.length - 1}/toMm`;
  return [{ pointer, code: "out-of-range", values: { given: lengthMm, above: 0 } }];
}

function placedSegments(startRadiusMm: number, given: readonly GivenSegment[]): Placed[] {
  let fromMm = 0;
  let fromRadiusMm = startRadiusMm;
  return given.map((each) => {
    const placed = placedFrom(each, fromMm, fromRadiusMm);
    fromMm = each.toMm;
    fromRadiusMm = each.radiusMm;
    return placed;
  });
}

function placedFrom(given: GivenSegment, fromMm: number, fromRadiusMm: number): Placed {
  const { toMm, radiusMm } = given;
  if (toMm < fromMm) return "turns-back";
  if (given.kind === "arc") return arcBetween(given, fromMm, fromRadiusMm) ?? "turns-back";
  return toMm === fromMm ? "step" : line(fromMm, toMm, fromRadiusMm, radiusMm);
}

/** The arc through both ends, if it runs upward all the way: the radius must have one value at each distance. */
function arcBetween(given: GivenArc, fromMm: number, fromRadiusMm: number): Segment | undefined {
  const { toMm, radiusMm, arcRadiusMm, bulge } = given;
  const alongMm = toMm - fromMm;
  const outMm = radiusMm - fromRadiusMm;
  const chordMm = Math.hypot(alongMm, outMm);
  if (alongMm <= 0 || chordMm > 2 * arcRadiusMm + TYPED_SLACK_MM) return undefined;
  const side = bulge === "outward" ? 1 : -1;
  // A half circle typed to hundredths may miss its own ends: it is drawn as large as they are apart.
  const ownRadiusMm = Math.max(arcRadiusMm, chordMm / 2);
  const sagittaArmMm = Math.sqrt(ownRadiusMm * ownRadiusMm - (chordMm * chordMm) / 4);
  // The centre lies on the chord's perpendicular, on the side away from the bulge.
  const centreMm = (fromMm + toMm) / 2 + (side * sagittaArmMm * outMm) / chordMm;
  const centreRadiusMm = (fromRadiusMm + radiusMm) / 2 - (side * sagittaArmMm * alongMm) / chordMm;
  const innermostMm = Math.min(side * fromRadiusMm, side * radiusMm);
  if (innermostMm - side * centreRadiusMm < -TYPED_SLACK_MM) return undefined;
  return arc(fromMm, toMm, { centreMm, centreRadiusMm, arcRadiusMm: ownRadiusMm, side });
}

/** Only an inward arc gets nearer to the axis than both its ends: a larger circle would not. */
function throughAxis(pointer: string, segment: Segment): Fault {
  const startMm = radiusOnSegmentMm(segment, segment.fromMm);
  const endMm = radiusOnSegmentMm(segment, segment.toMm);
  const given = segment.kind === "arc" ? segment.arcRadiusMm : 0;
  const min = radiusTouchingAxisMm(startMm, endMm, segment.toMm - segment.fromMm);
  return { pointer: `${pointer}/arcRadiusMm`, code: "out-of-range", values: { given, min } };
}

/**
 * Radius in mm of the circle through two points that touches the axis between them. With p and q their distances from the
 * axis, L along it and a the touching point: a² + p² = 2pR and (L − a)² + q² = 2qR.
 */
function radiusTouchingAxisMm(pMm: number, qMm: number, alongMm: number): number {
  const chordMm = Math.hypot(alongMm, qMm - pMm);
  const touchMm =
    (pMm * (alongMm * alongMm + qMm * (qMm - pMm))) / (Math.sqrt(pMm * qMm) * chordMm + pMm * alongMm);
  return pMm > 0 ? (touchMm * touchMm + pMm * pMm) / (2 * pMm) : (alongMm * alongMm + qMm * qMm) / (2 * qMm);
}
