import type { ProfilePoint } from "../bit/profile.ts";
import type { Fault } from "../quantity/fault.ts";
import { TYPED_SLACK_MM, type WantedPath, type WantedSegment } from "./wanted-path.ts";

/**
 * One stretch of the wall, with what is to be removed on its left as one goes along it; an arc's centre is on one side or the
 * other.
 */
export type Stretch = {
  readonly from: ProfilePoint;
  readonly to: ProfilePoint;
  readonly arc:
    | { readonly radiusMm: number; readonly centre: ProfilePoint; readonly isHollow: boolean }
    | undefined;
  readonly index: number;
};

/** The wall in the order that has the waste on its left: from the front face, around the edge, toward the back one. */
export function stretchesOf({ thicknessMm, start, segments }: WantedPath): Stretch[] {
  const onSurface = (point: ProfilePoint) => snapped(point, thicknessMm);
  const corners = [onSurface(start), ...segments.map(onSurface)];
  const last = corners.at(-1) ?? start;
  const isForward = alongSurfaceMm(onSurface(start), thicknessMm) <= alongSurfaceMm(last, thicknessMm);
  const stretches = segments.map((segment, index) => {
    const ends = [corners[index] ?? start, corners[index + 1] ?? start] as const;
    const [from, to] = isForward ? ends : [ends[1], ends[0]];
    return { from, to, arc: arcOf(segment, from, to), index };
  });
  return isForward ? stretches : stretches.reverse();
}

/** A corner that was typed a little off a face or the edge lies on it. */
function snapped({ xMm, zMm }: ProfilePoint, thicknessMm: number): ProfilePoint {
  return {
    xMm: xMm <= TYPED_SLACK_MM ? 0 : xMm,
    zMm: zMm <= TYPED_SLACK_MM ? 0 : thicknessMm - zMm <= TYPED_SLACK_MM ? thicknessMm : zMm,
  };
}

/** Distance along the stock's surface: up the edge from the front face, negative on that face, and on along the back one. */
function alongSurfaceMm({ xMm, zMm }: ProfilePoint, thicknessMm: number): number {
  if (zMm === 0) return -xMm;
  return zMm === thicknessMm ? thicknessMm + xMm : zMm;
}

function arcOf(segment: WantedSegment, from: ProfilePoint, to: ProfilePoint): Stretch["arc"] {
  if (segment.kind === "line") return undefined;
  const [alongX, alongZ] = [to.xMm - from.xMm, to.zMm - from.zMm];
  const chordMm = Math.hypot(alongX, alongZ);
  // Typed to hundredths, an arc this short says nothing but where it ends.
  if (chordMm <= TYPED_SLACK_MM) return undefined;
  const radiusMm = Math.max(segment.arcRadiusMm, chordMm / 2);
  const armMm = Math.sqrt(radiusMm * radiusMm - (chordMm * chordMm) / 4);
  const isHollow = segment.curve === "hollow";
  // The centre of a hollow lies on the waste's side, which is the left.
  const left = (isHollow ? armMm : -armMm) / chordMm;
  const centre = {
    xMm: (from.xMm + to.xMm) / 2 - left * alongZ,
    zMm: (from.zMm + to.zMm) / 2 + left * alongX,
  };
  return { radiusMm, centre, isHollow };
}

/** Arcs that bulge out of the stock between their ends. */
export function leavingFaults(stretches: readonly Stretch[], thicknessMm: number): Fault[] {
  return stretches.flatMap((stretch): Fault[] => {
    const out = turningPoints(stretch).find(
      ({ xMm, zMm }) => Math.min(xMm, zMm, thicknessMm - zMm) < -TYPED_SLACK_MM,
    );
    const pointer = `/segments/${stretch.index}`;
    return out === undefined ? [] : [{ pointer, code: "profile-leaves-stock", values: out }];
  });
}

/** Where an arc is farthest along x or z, if that lies between its ends: on the other side of the chord than a centre would. */
function turningPoints({ from, to, arc }: Stretch): ProfilePoint[] {
  if (arc === undefined) return [];
  const { centre, radiusMm, isHollow } = arc;
  const all = [
    { xMm: centre.xMm + radiusMm, zMm: centre.zMm },
    { xMm: centre.xMm - radiusMm, zMm: centre.zMm },
    { xMm: centre.xMm, zMm: centre.zMm + radiusMm },
    { xMm: centre.xMm, zMm: centre.zMm - radiusMm },
  ];
  return all.filter(({ xMm, zMm }) => {
    const left = (to.xMm - from.xMm) * (zMm - from.zMm) - (to.zMm - from.zMm) * (xMm - from.xMm);
    return isHollow ? left < 0 : left > 0;
  });
}
