import type { Policy } from "../policy/policy.ts";
import { floorTo } from "../quantity/round.ts";
import type { YearMovement } from "./year-movement.ts";

/** Where one side of a panel stands, the same on both of its ends: the panel is held in the middle. */
export type SideState = {
  readonly sizeMm: number;
  /** Between the panel's edge and the bottom of the groove; below 0 it would push the frame apart. */
  readonly gapMm: number;
  /** How far the edge reaches into the groove; below 0 light shows. */
  readonly engagementMm: number;
};

/** One dimension of a panel through the year. */
export type PanelDimension = {
  readonly openingMm: number;
  /** Size to cut now, or the size it was cut to. */
  readonly cutMm: number;
  readonly moves: "across-grain" | "along-grain";
  /** What to expect. */
  readonly now: SideState;
  readonly driest: SideState;
  readonly wettest: SideState;
  /** Least gap, with every uncertainty at its worst. */
  readonly gapLeastMm: number;
  /** Least and greatest engagement, with every uncertainty at its worst. */
  readonly engagementLeastMm: number;
  readonly engagementMostMm: number;
  /** Least engagement of one end when the panel has slid to the bottom of the other groove. */
  readonly engagementSlidMm: number;
  /** The shallowest groove in which a panel keeps both its clearance and its cover. */
  readonly grooveDepthNeededMm: number;
};

/** What one dimension is found from. */
export type DimensionContext = {
  readonly openingMm: number;
  readonly grooveDepthMm: number;
  /** Size it was cut to. Default: the size is found. */
  readonly givenMm: number | undefined;
  readonly moves: PanelDimension["moves"];
  readonly movement: YearMovement;
  readonly policy: Pick<Policy, "panelClearanceMinMm" | "panelEngagementMinMm">;
};

/** Decimals of a millimetre a panel can be cut to. */
const CUT_DECIMALS = 1;
const CUT_STEP_MM = 10 ** -CUT_DECIMALS;

/**
 * The largest size that keeps its clearance when it has swollen most, cut down to a tenth of a millimetre:
 * P = (opening + 2·groove − 2·clearance)/(1 + swelling); and how it then stands in its grooves through the year. Across
 * the grain and along it alike. Source: geometry of a floating panel, common practice.
 */
export function panelDimension(context: DimensionContext): PanelDimension {
  const { openingMm, grooveDepthMm, givenMm, moves, movement, policy } = context;
  const betweenBottomsMm = openingMm + 2 * grooveDepthMm;
  const largestMm = (betweenBottomsMm - 2 * policy.panelClearanceMinMm) / (1 + movement.swellsMostRatio);
  const cutMm = givenMm ?? floorTo(largestMm, CUT_DECIMALS);
  const at = (ratio: number): SideState => {
    const sizeMm = cutMm * (1 + ratio);
    return { sizeMm, gapMm: (betweenBottomsMm - sizeMm) / 2, engagementMm: (sizeMm - openingMm) / 2 };
  };
  const smallest = at(-movement.shrinksMostRatio);
  const largest = at(movement.swellsMostRatio);
  return {
    openingMm,
    cutMm,
    moves,
    now: at(0),
    driest: at(movement.toDriestRatio),
    wettest: at(movement.toWettestRatio),
    gapLeastMm: largest.gapMm,
    engagementLeastMm: smallest.engagementMm,
    engagementMostMm: largest.engagementMm,
    engagementSlidMm: smallest.sizeMm - openingMm - grooveDepthMm,
    grooveDepthNeededMm: grooveDepthNeededMm(context),
  };
}

/** The depth at which the largest size that never bottoms is also the smallest that still covers. */
function grooveDepthNeededMm({ openingMm, movement, policy }: DimensionContext): number {
  const coversMm = openingMm + 2 * policy.panelEngagementMinMm;
  // Cutting down to the step takes up to one step more.
  const cutMm = coversMm / (1 - movement.shrinksMostRatio) + CUT_STEP_MM;
  return (cutMm * (1 + movement.swellsMostRatio) - openingMm) / 2 + policy.panelClearanceMinMm;
}
