import { type ConstraintContext, type ConstraintUse, usesAtLoad } from "../cut/constraints.ts";
import { cuttingPowerW } from "../cut/cutting-force.ts";
import type { Edge } from "../cut/edge.ts";
import { type Feed, feedFor, secondsAlong } from "../cut/feed.ts";
import { type Load, loadOf } from "../cut/load.ts";
import type { Pass } from "../cut/passes.ts";

/** A pass with the feed it is made at. */
export type PlannedPass = {
  readonly pass: Pass;
  readonly feed: Feed;
  /** Chip, force, torque and stress at this feed: less than planned where a hand cannot keep up. */
  readonly load: Load;
  /** How much of every constraint it uses at this feed. */
  readonly uses: readonly ConstraintUse[];
  /** Mean power at this feed and speed, at the upper edge of its band. */
  readonly powerW: number;
  /** One figure for each edge, in the order of the request. */
  readonly secondsPerEdge: readonly number[];
};

/** What a feed follows from, the same for every pass of a plan. */
export type FeedContext = {
  readonly load: ConstraintContext;
  readonly edges: readonly Edge[];
  readonly rpm: number;
};

/** A feed this near to the one it was planned at is that one. */
const SAME_FEED_RATIO = 1 - 1e-9;

/** No hand brings work up to the bit, along it and off again in less, s. Ours. */
const LEAST_SECONDS_PER_RUN = 1;

/** A pass at this speed: how fast to feed it, and what that takes. */
export function plannedPass(pass: Pass, { load: context, edges, rpm }: FeedContext): PlannedPass {
  const { setup, bit, policy } = context;
  const { geometry } = pass;
  const feed = feedFor(
    pass.load.feedPerToothMm,
    rpm,
    bit.wings,
    setup.greatestRadiusMm,
    policy.handFeedMaxMPerMin,
  );
  const isHandBound = feed.feedPerToothMm < pass.load.feedPerToothMm * SAME_FEED_RATIO;
  const load = isHandBound ? loadOf(context, geometry, feed.feedPerToothMm) : pass.load;
  return {
    pass,
    feed,
    load,
    uses: isHandBound ? usesAtLoad(context, pass.uses, load) : pass.uses,
    powerW: cuttingPowerW(load.specificForceNPerMm2, geometry.removedAreaMm2, feed.feedMPerMin),
    secondsPerEdge: edges.map(
      ({ lengthMm }) =>
        setup.rows * Math.max(LEAST_SECONDS_PER_RUN, secondsAlong(lengthMm, feed.feedMPerMin)),
    ),
  };
}
