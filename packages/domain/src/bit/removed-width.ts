import { type Stretch, stretchesAbove } from "./moments.ts";
import { type ArcSegment, type Outline, radiusOnSegmentMm, type Segment } from "./outline.ts";
import type { BitSetting } from "./section.ts";

/**
 * Width of wood removed between two heights above the table, running straight from one end to the other. Strips of one
 * list follow each other upward and cover the whole thickness.
 */
export type Strip = {
  readonly fromMm: number;
  readonly toMm: number;
  readonly startWidthMm: number;
  readonly endWidthMm: number;
};

/** Strips thinner than this are rounding, mm. */
const THINNEST_STRIP_MM = 1e-9;

/**
 * The width removed at each height of the work, measured from the fence face (or the middle of a groove). Arcs become chords that
 * stay within `toleranceMm` of them.
 */
export function removedWidths(outline: Outline, setting: BitSetting, toleranceMm: number): Strip[] {
  const { heightMm, fenceMm, thicknessMm } = setting;
  const within = { fromMm: heightMm - thicknessMm, toMm: heightMm };
  const cut = outline
    .filter(({ role }) => role === "edge")
    .flatMap((segment) =>
      stretchesAbove(segment, within, fenceMm).flatMap((stretch) => chords(segment, stretch, toleranceMm)),
    )
    .map(({ fromMm, toMm, startWidthMm, endWidthMm }) => ({
      // Upward in the work is back toward the tip.
      fromMm: heightMm - toMm,
      toMm: heightMm - fromMm,
      startWidthMm: Math.max(0, endWidthMm - fenceMm),
      endWidthMm: Math.max(0, startWidthMm - fenceMm),
    }))
    .reverse();
  return wholeThickness(cut, thicknessMm);
}

/** The greater of two lists of strips over the same thickness: what is gone after both. */
export function widestOf(one: readonly Strip[], other: readonly Strip[]): Strip[] {
  const widest: Strip[] = [];
  let fromMm = Math.min(one[0]?.fromMm ?? 0, other[0]?.fromMm ?? 0);
  // Both lists rise without a break: they are walked together, from bound to bound of either.
  for (let mine = 0, theirs = 0; mine < one.length || theirs < other.length; ) {
    const [strip, otherStrip] = [one[mine], other[theirs]];
    const toMm = Math.min(
      strip?.toMm ?? Number.POSITIVE_INFINITY,
      otherStrip?.toMm ?? Number.POSITIVE_INFINITY,
    );
    if (toMm - fromMm >= THINNEST_STRIP_MM) {
      widest.push(...widerOf(partOf(strip, fromMm, toMm), partOf(otherStrip, fromMm, toMm)));
    }
    if (strip?.toMm === toMm) mine += 1;
    if (otherStrip?.toMm === toMm) theirs += 1;
    fromMm = toMm;
  }
  return widest;
}

/**
 * The same wall in as few strips as stay within `toleranceMm` of it. Steps between strips stay where they are. Each strip reaches
 * as far as one straight line can, by narrowing the slopes that still pass every corner so far.
 */
export function simplified(strips: readonly Strip[], toleranceMm: number): Strip[] {
  const result: Strip[] = [];
  let least = -Infinity;
  let most = Infinity;
  for (const strip of strips) {
    const open = result.at(-1);
    const joins = open !== undefined && open.endWidthMm === strip.startWidthMm && open.toMm === strip.fromMm;
    const run = strip.toMm - (open?.fromMm ?? strip.fromMm);
    const rise = strip.endWidthMm - (open?.startWidthMm ?? strip.startWidthMm);
    const [low, high] = [(rise - toleranceMm) / run, (rise + toleranceMm) / run];
    const isCut = isUntouched(strip) === (open !== undefined && isUntouched(open));
    if (joins && isCut && rise / run >= least && rise / run <= most) {
      result[result.length - 1] = { ...open, toMm: strip.toMm, endWidthMm: strip.endWidthMm };
      least = Math.max(least, low);
      most = Math.min(most, high);
    } else {
      result.push(strip);
      const own = strip.toMm - strip.fromMm;
      const ownRise = strip.endWidthMm - strip.startWidthMm;
      [least, most] = [(ownRise - toleranceMm) / own, (ownRise + toleranceMm) / own];
    }
  }
  return result;
}

/** Whether nothing is removed at these heights. */
export function isUntouched({ startWidthMm, endWidthMm }: Strip): boolean {
  return startWidthMm === 0 && endWidthMm === 0;
}

/** A segment as straight pieces in terms of its distance from the tip and its radius. */
function chords(segment: Segment, stretch: Stretch, toleranceMm: number): Strip[] {
  const places =
    segment.kind === "line" ? [stretch.fromMm, stretch.toMm] : arcPlaces(segment, stretch, toleranceMm);
  return places.slice(1).map((toMm, index) => {
    const fromMm = places[index] ?? toMm;
    return {
      fromMm,
      toMm,
      startWidthMm: radiusOnSegmentMm(segment, fromMm),
      endWidthMm: radiusOnSegmentMm(segment, toMm),
    };
  });
}

/** Places along an arc in equal steps of angle: a chord over 2φ leaves its arc by R·(1 − cos φ). */
function arcPlaces({ centreMm, arcRadiusMm }: ArcSegment, stretch: Stretch, toleranceMm: number): number[] {
  const angleRad = (tMm: number) => Math.asin(Math.max(-1, Math.min(1, (tMm - centreMm) / arcRadiusMm)));
  const startRad = angleRad(stretch.fromMm);
  const spanRad = angleRad(stretch.toMm) - startRad;
  const stepRad = 2 * Math.acos(Math.max(0, 1 - toleranceMm / arcRadiusMm));
  const count = Math.max(1, Math.ceil(spanRad / stepRad));
  return Array.from({ length: count + 1 }, (_, index) => {
    if (index === 0) return stretch.fromMm;
    if (index === count) return stretch.toMm;
    return centreMm + arcRadiusMm * Math.sin(startRad + (spanRad * index) / count);
  });
}

/** Strips with nothing removed put in wherever no edge cuts. */
function wholeThickness(cut: readonly Strip[], thicknessMm: number): Strip[] {
  const strips: Strip[] = [];
  let reachedMm = 0;
  for (const strip of cut) {
    if (strip.fromMm - reachedMm > THINNEST_STRIP_MM) strips.push(untouched(reachedMm, strip.fromMm));
    strips.push({
      ...strip,
      fromMm: strip.fromMm - reachedMm > THINNEST_STRIP_MM ? strip.fromMm : reachedMm,
    });
    reachedMm = strip.toMm;
  }
  if (thicknessMm - reachedMm > THINNEST_STRIP_MM) strips.push(untouched(reachedMm, thicknessMm));
  return strips;
}

function untouched(fromMm: number, toMm: number): Strip {
  return { fromMm, toMm, startWidthMm: 0, endWidthMm: 0 };
}

/** The part of a strip between two heights in it; nothing is removed where there is none. */
function partOf(strip: Strip | undefined, fromMm: number, toMm: number): Strip {
  if (strip === undefined) return untouched(fromMm, toMm);
  if (fromMm === strip.fromMm && toMm === strip.toMm) return strip;
  const slope = (strip.endWidthMm - strip.startWidthMm) / (strip.toMm - strip.fromMm);
  const startWidthMm = Math.max(0, strip.startWidthMm + slope * (fromMm - strip.fromMm));
  const endWidthMm = Math.max(0, strip.startWidthMm + slope * (toMm - strip.fromMm));
  return { fromMm, toMm, startWidthMm, endWidthMm };
}

/** The greater of two strips between the same bounds: two pieces where they cross. */
function widerOf(one: Strip, other: Strip): Strip[] {
  const startMm = one.startWidthMm - other.startWidthMm;
  const endMm = one.endWidthMm - other.endWidthMm;
  if (startMm >= 0 && endMm >= 0) return [one];
  if (startMm <= 0 && endMm <= 0) return [other];
  const share = startMm / (startMm - endMm);
  const crossingMm = one.fromMm + share * (one.toMm - one.fromMm);
  const widthMm = one.startWidthMm + share * (one.endWidthMm - one.startWidthMm);
  const [first, second] = startMm > 0 ? [one, other] : [other, one];
  return [
    { ...first, toMm: crossingMm, endWidthMm: widthMm },
    { ...second, fromMm: crossingMm, startWidthMm: widthMm },
  ];
}
