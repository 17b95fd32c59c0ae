import type { Bit } from "../bit/bit.ts";
import { bitSolid } from "../bit/solid.ts";
import { type LimitName, limitsBroken, limitsHold, speedCeiling } from "../limit/ceiling.ts";
import { trialVerdict } from "../limit/tested.ts";
import type { SpeedTrial } from "../limit/trial.ts";
import type { Policy } from "../policy/policy.ts";
import { DomainError } from "../quantity/fault.ts";
import { hasColletFor } from "../router/collet.ts";
import { type DialSpeed, dialSpeeds } from "../router/dial.ts";
import type { Mounting } from "../router/mounting.ts";
import type { Router } from "../router/router.ts";
import { mountingOf } from "./clearance.ts";
import { pairFaults } from "./faults.ts";
import { limitContext } from "./limit-context.ts";

export type TrialInput = {
  readonly bit: Bit;
  readonly router: Router;
  /** Default: a table. */
  readonly mounting?: Mounting;
  readonly policy: Policy;
  /** Every trial of this bit so far, in this router and in others, each at the speed its mark was said to give. */
  readonly trials: readonly SpeedTrial[];
};

export type NextTrial =
  | {
      readonly kind: "try";
      readonly setting: DialSpeed;
      /** Which step of the climb this is, from 1, and how many there are if it runs free every time. */
      readonly number: number;
      readonly ofAtMost: number;
      /** What the climb stays under. */
      readonly under: TrialCeiling;
    }
  | {
      readonly kind: "done";
      readonly reason: "shook" | "at-ceiling";
      /** Fastest speed under the ceiling at which it ran free in this router; undefined if it never did. */
      readonly fastestFreeRpm: number | undefined;
      readonly under: TrialCeiling;
    }
  | { readonly kind: "not-possible"; readonly reason: "no-collet-fits" | "table-only" }
  | {
      readonly kind: "not-possible";
      readonly reason: "router-too-fast";
      readonly slowestRpm: number;
      readonly breaks: readonly LimitName[];
      readonly limitRpm: number;
    };

export type TrialCeiling = { readonly ceilingRpm: number; readonly bindingLimit: LimitName };

/** A recorded speed may be rounded: this near to a mark's it is that mark's. Ours. */
const SAME_SPEED_RATIO = 0.001;

/**
 * The next setting at which to try a bit out without wood, in a climb from the slowest mark: each step at most the policy's
 * `trialStepRatio` above the fastest speed that ran free in this router, or the very next mark if marks lie farther apart.
 * Every limit but the trials' own holds at each setting. A bit that once shook, in any router, is not tried within one step
 * of that speed (the policy's `shookMarginRatio`). Record a trial at the `rpm` proposed, or put a tachometer reading into the dial first: a
 * speed that is no mark's may lead to the same mark again. Throws a DomainError if bit and router have no answer.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * const router = { minRpm: 10_000, maxRpm: 20_000, dial: { marks: { first: 1, last: 5 } } };
 * nextTrial({ bit, router, policy: DEFAULT_POLICY, trials: [] }) // → { kind: "try", number: 1, setting: { mark: 1, rpm: 10_000 } }
 */
export function nextTrial({ bit, router, mounting = "table", policy, trials }: TrialInput): NextTrial {
  const faults = pairFaults(bit, router);
  if (faults.length > 0) throw new DomainError(faults);
  const solid = bitSolid(bit);
  if (!hasColletFor(bit.shankDiameterMm, router)) return { kind: "not-possible", reason: "no-collet-fits" };
  if (mounting === "handheld" && mountingOf(bit, solid, policy).allowed === "table-only") {
    return { kind: "not-possible", reason: "table-only" };
  }
  const { rpm: ceilingRpm, binding, limits } = speedCeiling(limitContext({ bit, router, policy }, solid));
  const speeds = dialSpeeds(router, policy).sort((a, b) => a.rpm - b.rpm);
  const [slowest] = speeds;
  const holding = speeds.filter((speed) => limitsHold(limits, speed));
  if (holding.length === 0 && slowest !== undefined) {
    const broken = limitsBroken(limits, slowest);
    return {
      kind: "not-possible",
      reason: "router-too-fast",
      slowestRpm: slowest.rpm,
      breaks: broken.map(({ name }) => name),
      limitRpm: Math.min(...broken.map(({ rpm }) => rpm)),
    };
  }
  const under = { ceilingRpm, bindingLimit: binding.name };
  const calm = holding.filter((speed) => isClearOfShaking(speed, trials, policy));
  const climb = climbFrom(trialVerdict(trials).freeRpm, calm, policy);
  const [setting] = climb;
  const free = freeSpeeds(trials, ceilingRpm);
  if (setting !== undefined) {
    return { kind: "try", setting, number: free.length + 1, ofAtMost: free.length + climb.length, under };
  }
  return {
    kind: "done",
    reason: calm.length < holding.length ? "shook" : "at-ceiling",
    fastestFreeRpm: free.at(-1),
    under,
  };
}

/** Whether a setting stays a step under every speed at which the bit shook, and surely under it. */
function isClearOfShaking(
  { rpm, rpmHighest }: DialSpeed,
  trials: readonly SpeedTrial[],
  { shookMarginRatio }: Policy,
): boolean {
  return trials.every(
    ({ outcome, rpm: shookRpm }) =>
      outcome !== "shook" || (rpm <= shookRpm * shookMarginRatio && rpmHighest < shookRpm),
  );
}

/** The settings still to be tried, in order, if the bit runs free at each. */
function climbFrom(
  freeRpm: number | undefined,
  rising: readonly DialSpeed[],
  { trialStepRatio }: Policy,
): DialSpeed[] {
  const climb: DialSpeed[] = [];
  let reachedRpm = freeRpm;
  for (;;) {
    const next = nextStep(reachedRpm, rising, trialStepRatio);
    if (next === undefined) return climb;
    climb.push(next);
    reachedRpm = next.rpm;
  }
}

function nextStep(
  reachedRpm: number | undefined,
  rising: readonly DialSpeed[],
  stepRatio: number,
): DialSpeed | undefined {
  if (reachedRpm === undefined) return rising[0];
  const faster = rising.filter(({ rpm }) => rpm > reachedRpm * (1 + SAME_SPEED_RATIO));
  return faster.findLast(({ rpm }) => rpm <= reachedRpm * stepRatio) ?? faster[0];
}

/** The speeds at which it ran free in this router, under the ceiling and under any at which it shook there, rising. */
function freeSpeeds(trials: readonly SpeedTrial[], ceilingRpm: number): number[] {
  const { freeRpm = 0 } = trialVerdict(trials);
  const free = trials.filter(({ outcome, isSameRouter: sameRouter }) => outcome === "ran-free" && sameRouter);
  const under = free.map(({ rpm }) => rpm).filter((rpm) => rpm <= Math.min(freeRpm, ceilingRpm));
  return [...new Set(under)].sort((a, b) => a - b);
}
