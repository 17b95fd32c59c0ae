import type { Outline } from "./outline.ts";
import { isUntouched, removedWidths, type Strip, simplified, widestOf } from "./removed-width.ts";
import type { BitSetting } from "./section.ts";

/** A corner of a cross-section: x into the work from its edge (or from the middle of a groove), z up from the table. */
export type ProfilePoint = { readonly xMm: number; readonly zMm: number };

/** One piece of the cross-section that is left: its boundary, and what is missing inside it. */
export type ProfilePiece = {
  readonly boundary: readonly ProfilePoint[];
  readonly holes: readonly (readonly ProfilePoint[])[];
};

/** The cross-section of the work, square to the feed. */
export type Profile = readonly ProfilePiece[];

export type ProfileView = {
  /** An edge is cut on one side of x = 0, a groove on both alike. */
  readonly sides: 1 | 2;
  /** Chords stay this near to the arcs they stand for, and as much again to save corners. Default: 0.02 mm. */
  readonly toleranceMm?: number;
  /** How far into the work is shown. Default: 10 mm past the widest cut. */
  readonly depthMm?: number;
};

/** Nearer than a workshop can measure. Ours. */
const USUAL_TOLERANCE_MM = 0.02;

/** How much uncut work is shown beside the cut. Ours. */
const USUAL_MARGIN_MM = 10;

/**
 * The cross-section of the work after each of several passes, one after the other at these settings: what any pass
 * removed stays gone. All are shown to the same depth. The thickness of the work is that of the first setting.
 * @example
 * const outline = formOutline({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 });
 * const settings = [4, 8].map((heightMm) => ({ heightMm, fenceMm: 0, thicknessMm: 19 }));
 * profileAfterPasses(outline, settings, { sides: 1 }).length // → 2
 */
export function profileAfterPasses(
  outline: Outline,
  settings: readonly BitSetting[],
  { sides, toleranceMm = USUAL_TOLERANCE_MM, depthMm }: ProfileView,
): Profile[] {
  const gone: Strip[][] = [];
  for (const setting of settings) {
    const own = removedWidths(outline, { ...setting, thicknessMm: thicknessOf(settings) }, toleranceMm);
    const before = gone.at(-1);
    gone.push(before === undefined ? own : widestOf(before, own));
  }
  const shownMm = depthMm ?? widestMm(gone.flat()) + USUAL_MARGIN_MM;
  const shown = gone.map((strips) => simplified(strips, toleranceMm));
  return shown.map((strips) => (sides === 1 ? [rightOf(strips, shownMm)] : grooved(strips, shownMm)));
}

/**
 * The cross-section of the work after one setting: the rectangle x from 0 (−depth for a groove) to depth, z from 0 to its thickness,
 * less what the cutting edges sweep.
 * @example
 * const outline = formOutline({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 });
 * const [piece] = profileAfter(outline, { heightMm: 10, fenceMm: 0, thicknessMm: 19 }, { sides: 1 });
 * piece.boundary.length // → 6
 */
export function profileAfter(outline: Outline, setting: BitSetting, view: ProfileView): Profile {
  return profileAfterPasses(outline, [setting], view)[0] ?? [];
}

function thicknessOf(settings: readonly BitSetting[]): number {
  return settings[0]?.thicknessMm ?? 0;
}

function widestMm(strips: readonly Strip[]): number {
  return strips.reduce(
    (widest, { startWidthMm, endWidthMm }) => Math.max(widest, startWidthMm, endWidthMm),
    0,
  );
}

/** What is left between the cut and the depth shown. */
function rightOf(strips: readonly Strip[], depthMm: number): ProfilePiece {
  const [bottomMm, topMm] = extentMm(strips);
  const boundary = cleaned([
    { xMm: depthMm, zMm: topMm },
    ...wall(strips).reverse(),
    { xMm: depthMm, zMm: bottomMm },
  ]);
  return { boundary, holes: [] };
}

/** A groove cut right through leaves two pieces; any other leaves one, with its cavities open to a face or inside. */
function grooved(strips: readonly Strip[], depthMm: number): ProfilePiece[] {
  if (strips.every((strip) => !isUntouched(strip))) {
    const right = rightOf(strips, depthMm);
    return [{ boundary: mirrored(right.boundary), holes: [] }, right];
  }
  const [bottomMm, topMm] = extentMm(strips);
  const cavities = cavitiesOf(strips);
  const atBottom = cavities.filter((cavity) => cavity[0]?.fromMm === bottomMm);
  const atTop = cavities.filter((cavity) => cavity.at(-1)?.toMm === topMm);
  const inside = cavities.filter((cavity) => !atBottom.includes(cavity) && !atTop.includes(cavity));
  const boundary = cleaned([
    { xMm: -depthMm, zMm: bottomMm },
    // In at the left wall, out at the right one.
    ...atBottom.flatMap((cavity) => [...leftWall(cavity), ...wall(cavity).reverse()]),
    { xMm: depthMm, zMm: bottomMm },
    { xMm: depthMm, zMm: topMm },
    ...atTop.flatMap((cavity) => [...wall(cavity).reverse(), ...leftWall(cavity)]),
    { xMm: -depthMm, zMm: topMm },
  ]);
  return [
    { boundary, holes: inside.map((cavity) => cleaned([...wall(cavity), ...leftWall(cavity).reverse()])) },
  ];
}

function extentMm(strips: readonly Strip[]): readonly [number, number] {
  return [strips[0]?.fromMm ?? 0, strips.at(-1)?.toMm ?? 0];
}

/** Runs of strips without a break in which something is removed. */
function cavitiesOf(strips: readonly Strip[]): Strip[][] {
  const cavities: Strip[][] = [];
  let open: Strip[] | undefined;
  for (const strip of strips) {
    if (isUntouched(strip)) open = undefined;
    else if (open === undefined) {
      open = [strip];
      cavities.push(open);
    } else open.push(strip);
  }
  return cavities;
}

/** The side of the cut at positive x, upward. */
function wall(strips: readonly Strip[]): ProfilePoint[] {
  return strips.flatMap(({ fromMm, toMm, startWidthMm, endWidthMm }) => [
    { xMm: startWidthMm, zMm: fromMm },
    { xMm: endWidthMm, zMm: toMm },
  ]);
}

/** The same at negative x, upward. */
function leftWall(strips: readonly Strip[]): ProfilePoint[] {
  return wall(strips).map(({ xMm, zMm }) => ({ xMm: -xMm, zMm }));
}

function mirrored(points: readonly ProfilePoint[]): ProfilePoint[] {
  return points.map(({ xMm, zMm }) => ({ xMm: -xMm, zMm })).reverse();
}

/** The same ring without points that repeat their neighbour. */
function cleaned(points: readonly ProfilePoint[]): ProfilePoint[] {
  return points.filter(({ xMm, zMm }, index) => {
    const before = points.at(index - 1);
    return before === undefined || before.xMm !== xMm || before.zMm !== zMm;
  });
}
