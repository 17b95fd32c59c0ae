import { type Outline, radiusOnSegmentMm, type Segment } from "../outline.ts";

/** Sizes as bits are sold, or as they are read off: a form's sizes are proposed through each of several of these. */
export type Sizes = {
  readonly lengthMm: (mm: number) => number;
  readonly angleDeg: (deg: number) => number;
};

/** One stretch of a wall, from the bit's tip on: how long along the axis, and how deep at its start and end. */
export type WallStretch = {
  readonly kind: "level" | "slope" | "hollow" | "round";
  readonly lengthMm: number;
  readonly startMm: number;
  readonly endMm: number;
  /** Of a hollow or round one. */
  readonly arcRadiusMm: number;
};

/** Bearing of a proposed bit, mm: 1/2 in outside. Source: common practice. */
export const PROPOSED_PILOT_DIAMETER_MM = 12.7;

/** Lengths of edges that straight bits are sold with, mm: 1/2 to 2 in. Source: common practice. */
const EDGE_LENGTHS_MM = [12.7, 19.05, 25.4, 31.75, 38.1, 50.8] as const;

/** Depths nearer to each other than this are one: corners are typed to hundredths, mm. */
const TYPED_SLACK_MM = 0.02;

/** A wall, given as the outline of a bit that would just fill it with its axis at the fence, as stretches. */
export function stretchesOf(wall: Outline): WallStretch[] {
  return wall.map((segment) => {
    const startMm = radiusOnSegmentMm(segment, segment.fromMm);
    const endMm = radiusOnSegmentMm(segment, segment.toMm);
    const arcRadiusMm = segment.kind === "arc" ? segment.arcRadiusMm : 0;
    return {
      kind: kindOf(segment, endMm - startMm),
      lengthMm: segment.toMm - segment.fromMm,
      startMm,
      endMm,
      arcRadiusMm,
    };
  });
}

/** The only stretch of a wall, if it is of this kind. */
export function onlyStretch(wall: Outline, kind: WallStretch["kind"]): WallStretch | undefined {
  const [first, ...others] = stretchesOf(wall);
  return first?.kind === kind && others.length === 0 ? first : undefined;
}

/** Whether a stretch is deeper away from the tip: with the work the other way up it is not. */
export function isWidening({ startMm, endMm }: WallStretch): boolean {
  return endMm > startMm;
}

/** A slope that widens away from the tip: how far, and its angle to the axis in degrees. */
export function widening({
  kind,
  startMm,
  endMm,
  lengthMm,
}: WallStretch): { widthMm: number; angleDeg: number } | undefined {
  const widthMm = endMm - startMm;
  if (kind !== "slope" || widthMm <= 0) return undefined;
  return { widthMm, angleDeg: (Math.atan(widthMm / lengthMm) * 180) / Math.PI };
}

/** The shortest edge that is sold and at least so long; beyond them all, just so long. */
export function soldLengthMm(leastMm: number): number {
  return EDGE_LENGTHS_MM.find((lengthMm) => lengthMm >= leastMm) ?? leastMm;
}

/** Whether two lengths read off a wall are the same. */
export function isSameLength(oneMm: number, otherMm: number): boolean {
  return Math.abs(oneMm - otherMm) <= TYPED_SLACK_MM;
}

function kindOf(segment: Segment, riseMm: number): WallStretch["kind"] {
  if (segment.kind === "arc") return segment.side === 1 ? "hollow" : "round";
  return Math.abs(riseMm) <= TYPED_SLACK_MM ? "level" : "slope";
}
