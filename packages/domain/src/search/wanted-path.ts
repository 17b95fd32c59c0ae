import type { ProfilePoint } from "../bit/profile.ts";
import { DomainError, type Fault } from "../quantity/fault.ts";
import { rangeFaults } from "../quantity/range.ts";

/**
 * One stretch of a wanted wall, from where the one before ended: straight, or an arc of at most half a circle that leaves the
 * work hollow (as a cove does) or round (as a round-over does).
 */
export type WantedSegment =
  | ({ readonly kind: "line" } & ProfilePoint)
  | ({
      readonly kind: "arc";
      readonly arcRadiusMm: number;
      readonly curve: "hollow" | "round";
    } & ProfilePoint);

/**
 * The wall that is wanted along an edge, corner by corner: x from the edge into the work, z from the front face to the back
 * one. It starts and ends on the stock's surface, either end first.
 */
export type WantedPath = {
  readonly thicknessMm: number;
  readonly start: ProfilePoint;
  readonly segments: readonly WantedSegment[];
};

/** Accepted ranges of a wanted profile. Ours. */
export const WANTED_RANGES = {
  thicknessMm: { min: 1, max: 200 },
  xMm: { min: 0, max: 200 },
  arcRadiusMm: { min: 0.1, max: 1000 },
  segments: { min: 1, max: 60 },
} as const;

/** Corners are typed to hundredths: nearer to a face than this is on it, and a half circle may miss its ends by as much, mm. */
export const TYPED_SLACK_MM = 0.02;

/**
 * Whatever is wrong with a wanted path before it is looked at as a whole: ranges, ends that lie off the surface, arcs that do
 * not reach.
 */
export function pathFaults({ thicknessMm, start, segments }: WantedPath): Fault[] {
  const zRange = { min: 0, max: thicknessMm };
  const count = rangeFaults("/segments", segments.length, WANTED_RANGES.segments);
  const thickness = rangeFaults("/thicknessMm", thicknessMm, WANTED_RANGES.thicknessMm);
  if (count.length + thickness.length > 0) return [...thickness, ...count];
  const corners = [
    ...cornerFaults("/start", start, zRange),
    ...segments.flatMap((segment, index) => [
      ...cornerFaults(`/segments/${index}`, segment, zRange),
      ...(segment.kind === "arc"
        ? rangeFaults(`/segments/${index}/arcRadiusMm`, segment.arcRadiusMm, WANTED_RANGES.arcRadiusMm)
        : []),
    ]),
  ];
  if (corners.length > 0) return corners;
  return [
    ...endFaults("/start", start, thicknessMm),
    ...endFaults(`/segments/${segments.length - 1}`, segments.at(-1) ?? start, thicknessMm),
    ...segments.flatMap((segment, index) =>
      segment.kind === "arc" ? arcFaults(segment, segments[index - 1] ?? start, index) : [],
    ),
  ];
}

/** A DomainError with these faults, if there are any. */
export function refuse(faults: readonly Fault[]): void {
  if (faults.length > 0) throw new DomainError(faults);
}

function cornerFaults(
  pointer: string,
  { xMm, zMm }: ProfilePoint,
  zRange: { min: number; max: number },
): Fault[] {
  return [
    ...rangeFaults(`${pointer}/xMm`, xMm, WANTED_RANGES.xMm),
    ...rangeFaults(`${pointer}/zMm`, zMm, zRange),
  ];
}

function endFaults(pointer: string, { xMm, zMm }: ProfilePoint, thicknessMm: number): Fault[] {
  const offMm = Math.min(xMm, zMm, thicknessMm - zMm);
  return offMm <= TYPED_SLACK_MM
    ? []
    : [{ pointer, code: "profile-end-inside-stock", values: { xMm, zMm, thicknessMm } }];
}

function arcFaults(arc: Extract<WantedSegment, { kind: "arc" }>, from: ProfilePoint, index: number): Fault[] {
  const chordMm = Math.hypot(arc.xMm - from.xMm, arc.zMm - from.zMm);
  if (chordMm <= 2 * arc.arcRadiusMm + TYPED_SLACK_MM && chordMm > 0) return [];
  const values = { given: arc.arcRadiusMm, min: chordMm / 2 };
  return [{ pointer: `/segments/${index}/arcRadiusMm`, code: "out-of-range", values }];
}
