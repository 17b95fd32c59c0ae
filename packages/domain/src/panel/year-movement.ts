import { EVEN_RANGE, MOVEMENT_RANGES, movementMm } from "../wood/movement.ts";
import type { GrainDirection, Species, Wood } from "../wood/wood.ts";
import type { Sawn } from "./panel.ts";
import { type MoistureSpan, widened } from "./year-moisture.ts";

/** How one direction of a board moves in a year, as ratios of its size when it is cut. */
export type YearMovement = {
  /** What to expect at each end: positive if it is larger than now. */
  readonly toDriestRatio: number;
  readonly toWettestRatio: number;
  /** With every uncertainty at its worst; never below 0. */
  readonly shrinksMostRatio: number;
  readonly swellsMostRatio: number;
};

/** The three directions of a panel. */
export type PanelMovement = {
  readonly across: YearMovement;
  readonly along: YearMovement;
  readonly thickness: YearMovement;
};

/** What movement is computed from. */
export type MovementContext = {
  readonly wood: Wood;
  readonly sawn: Sawn;
  readonly now: { readonly percent: number; readonly tolerancePercent: number };
  readonly year: MoistureSpan;
  readonly spreadRatio: number;
};

/** Shrinkage along the grain from green to oven-dry, %: the upper of 0.1 to 0.2. Source: Wood Handbook chapter 4, from memory. */
export const ALONG_GRAIN_SHRINKAGE_PERCENT = 0.2;

const STILL: YearMovement = { toDriestRatio: 0, toWettestRatio: 0, shrinksMostRatio: 0, swellsMostRatio: 0 };

/** Ratio of the size by which a board changes between two moisture contents. */
type Change = (fromPercent: number, toPercent: number) => number;

/**
 * How a panel moves through the year: across the grain by eq. (13-2) inside 6 to 14 % and (13-3) outside it, along it
 * by a fixed small share, in thickness as the rings move most. Made materials are taken as still.
 */
export function panelMovement(context: MovementContext): PanelMovement {
  const { wood, sawn } = context;
  if (wood.kind !== "species") return { across: STILL, along: STILL, thickness: STILL };
  return {
    across: yearMovement(context, acrossGrain(wood, sawn === "flat" ? "tangential" : "radial")),
    along: yearMovement(context, alongGrain),
    // Boards are seldom sawn true, so the handbook's method falls short in thickness: the larger figure is taken.
    thickness: yearMovement(context, acrossGrain(wood, "tangential")),
  };
}

function yearMovement({ now, year, spreadRatio }: MovementContext, change: Change): YearMovement {
  const least = withinRange(now.percent - now.tolerancePercent);
  const greatest = withinRange(now.percent + now.tolerancePercent);
  const steps = [EVEN_RANGE.min, EVEN_RANGE.max].filter((step) => step > least && step < greatest);
  const wide = widened(year);
  return {
    toDriestRatio: change(now.percent, year.driestPercent),
    toWettestRatio: change(now.percent, year.wettestPercent),
    shrinksMostRatio:
      (1 + spreadRatio) * most([greatest, ...steps], wide.driestPercent, (from, to) => -change(from, to)),
    swellsMostRatio: (1 + spreadRatio) * most([least, ...steps], wide.wettestPercent, change),
  };
}

/**
 * The greatest change from any of these to the target. Where one equation takes over from the other the change steps, and
 * from a moisture at the step it may be greater than from one beyond it: those are tried too. The target needs none of
 * this: it is widened by more than the step.
 */
function most(froms: readonly number[], target: number, change: Change): number {
  return Math.max(0, ...froms.map((from) => change(from, target)));
}

function acrossGrain(species: Species, direction: GrainDirection): Change {
  return (fromMoisturePercent, toMoisturePercent) =>
    movementMm(species, direction, { sizeMm: 1, fromMoisturePercent, toMoisturePercent });
}

function alongGrain(fromPercent: number, toPercent: number): number {
  const wholeSpanPercent = MOVEMENT_RANGES.moisturePercent.max;
  return ((ALONG_GRAIN_SHRINKAGE_PERCENT / 100) * (toPercent - fromPercent)) / wholeSpanPercent;
}

function withinRange(percent: number): number {
  const { min, max } = MOVEMENT_RANGES.moisturePercent;
  return Math.min(max, Math.max(min, percent));
}
