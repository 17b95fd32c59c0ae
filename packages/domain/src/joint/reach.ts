import type { Strip } from "../bit/removed-width.ts";
import { widthAtMm } from "./half.ts";

/** A stretch of heights over which two walls stand to each other in one way. */
export type Stretch = { readonly fromMm: number; readonly toMm: number };

/** How far one half goes into the other until they meet, and where they do. */
export type Meeting = { readonly reachMm: number; readonly meetsAt: Stretch };

/** What is gone of both halves together between two heights, running straight from one end to the other. */
type Both = Stretch & { readonly startMm: number; readonly endMm: number };

/** Two steps that miss each other by up to this much, mm, make a tongue too thick or too thin, not a joint that stays open. Ours. */
const STEPS_MISS_AT_MOST_MM = 1;

/** Widths this near are one, and heights this near one height, mm: rounding. */
const ROUNDING_MM = 1e-6;

/**
 * How far two walls go into each other, pushed together square to the edge: the least that is gone of both at one height. Wood at a
 * height where a step of the one misses a step of the other by little is pressed, not met: it shows as overlap.
 */
export function meeting(wall: readonly Strip[], other: readonly Strip[]): Meeting {
  const runs = runsOf(together(wall, other));
  const meeting = runs.filter((run, index) => !isPinched(run, runs[index - 1], runs[index + 1]));
  const pieces = (meeting.length === 0 ? runs : meeting).flat();
  const reachMm = pieces.reduce((least, { startMm, endMm }) => Math.min(least, startMm, endMm), Infinity);
  const touching = pieces.filter(({ startMm, endMm }) => Math.min(startMm, endMm) <= reachMm + ROUNDING_MM);
  return { reachMm: Number.isFinite(reachMm) ? reachMm : 0, meetsAt: widestOf(touching) };
}

/** The heights that both walls have. */
export function sharedMm(wall: readonly Strip[], other: readonly Strip[]): Stretch {
  return {
    fromMm: Math.max(wall[0]?.fromMm ?? 0, other[0]?.fromMm ?? 0),
    toMm: Math.min(wall.at(-1)?.toMm ?? 0, other.at(-1)?.toMm ?? 0),
  };
}

function together(wall: readonly Strip[], other: readonly Strip[]): Both[] {
  const shared = sharedMm(wall, other);
  const bounds = [...wall, ...other]
    .flatMap(({ fromMm, toMm }) => [fromMm, toMm])
    .filter((zMm) => zMm >= shared.fromMm && zMm <= shared.toMm)
    .sort((one, next) => one - next);
  return bounds.slice(1).flatMap((toMm, index) => {
    const fromMm = bounds[index] ?? toMm;
    if (toMm - fromMm < ROUNDING_MM) return [];
    // Both run straight between two bounds: two places inside give the ends.
    const thirdMm = (toMm - fromMm) / 3;
    const [one, two] = [fromMm + thirdMm, toMm - thirdMm].map(
      (zMm) => (widthAtMm(wall, zMm) ?? 0) + (widthAtMm(other, zMm) ?? 0),
    );
    if (one === undefined || two === undefined) return [];
    return [{ fromMm, toMm, startMm: 2 * one - two, endMm: 2 * two - one }];
  });
}

/** Pieces that go on from each other without a step. */
function runsOf(pieces: readonly Both[]): Both[][] {
  const runs: Both[][] = [];
  for (const piece of pieces) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run !== undefined && last !== undefined && Math.abs(last.endMm - piece.startMm) < ROUNDING_MM) {
      run.push(piece);
    } else runs.push([piece]);
  }
  return runs;
}

/** A short run between two steps up, or between one and a face of the work. */
function isPinched(
  run: readonly Both[],
  before: readonly Both[] | undefined,
  after: readonly Both[] | undefined,
): boolean {
  const [first, last] = [run[0], run.at(-1)];
  if (first === undefined || last === undefined || (before ?? after) === undefined) return false;
  const beforeMm = before?.at(-1)?.endMm ?? Number.POSITIVE_INFINITY;
  const afterMm = after?.[0]?.startMm ?? Number.POSITIVE_INFINITY;
  const isShort = last.toMm - first.fromMm <= STEPS_MISS_AT_MOST_MM;
  return isShort && first.startMm < beforeMm && last.endMm < afterMm;
}

/** The longest stretch without a break. */
function widestOf(stretches: readonly Stretch[]): Stretch {
  let widest: Stretch = { fromMm: 0, toMm: 0 };
  let open: Stretch | undefined;
  for (const { fromMm, toMm } of stretches) {
    const goesOn = open !== undefined && fromMm - open.toMm < ROUNDING_MM;
    open = { fromMm: goesOn && open !== undefined ? open.fromMm : fromMm, toMm };
    if (open.toMm - open.fromMm > widest.toMm - widest.fromMm) widest = open;
  }
  return widest;
}
