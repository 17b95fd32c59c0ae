import { cuttingPowerW } from "../cut/cutting-force.ts";
import type { Edge } from "../cut/edge.ts";
import { type Feed, feedFor, secondsAlong } from "../cut/feed.ts";
import type { Pass } from "../cut/passes.ts";
import type { CutSetup } from "../cut/setup.ts";
import { MM_PER_M } from "../quantity/units.ts";

/** A pass with the feed it is made at. */
export type PlannedPass = {
  readonly pass: Pass;
  readonly feed: Feed;
  /** Mean chip at this feed. */
  readonly chipMeanMm: number;
  /** Mean power at this feed and speed, at the upper edge of its band. */
  readonly powerW: number;
  /** One figure for each edge, in the order of the request. */
  readonly secondsPerEdge: readonly number[];
};

/** What a feed follows from, the same for every pass of a plan. */
export type FeedContext = {
  readonly setup: CutSetup;
  readonly edges: readonly Edge[];
  readonly wings: number;
  readonly rpm: number;
  readonly handFeedMaxMPerMin: number;
};

/** A pass at this speed: how fast to feed it, and what that takes. */
export function plannedPass(pass: Pass, context: FeedContext): PlannedPass {
  const { setup, edges, wings, rpm, handFeedMaxMPerMin } = context;
  const { feedPerToothMm, specificForceNPerMm2, chipMeanMm } = pass.load;
  const feed = feedFor(feedPerToothMm, rpm, wings, setup.greatestRadiusMm, handFeedMaxMPerMin);
  return {
    pass,
    feed,
    chipMeanMm: (chipMeanMm * feed.feedPerToothMm) / feedPerToothMm,
    // A hand that cannot keep up takes a thinner chip, and no more power than this.
    powerW: cuttingPowerW(
      specificForceNPerMm2,
      pass.geometry.removedAreaMm2,
      (feedPerToothMm * rpm * wings) / MM_PER_M,
    ),
    secondsPerEdge: edges.map(({ lengthMm }) => setup.rows * secondsAlong(lengthMm, feed.feedMPerMin)),
  };
}
