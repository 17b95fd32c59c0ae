import { type LimitFinding, limitsHold, mayRise, speedCeiling } from "../limit/ceiling.ts";
import type { LimitContext, Unmeasured } from "../limit/limit.ts";
import type { DialSpeed } from "../router/dial.ts";
import type { DialSetting } from "./dial-setting.ts";

/** Speed that one uncertainty costs: what the dial could be set to if it were gone. */
export type UncertaintyCost = {
  readonly code: "dial" | Unmeasured;
  /** Nominal speed gained by measuring it. */
  readonly gainRpm: number;
};

/** A run-out that a good collet shows when it is measured, mm. Ours. */
const GOOD_RUN_OUT_MM = 0.02;

/** The fastest setting at which every limit holds. */
export function fastestThatHolds(
  speeds: readonly DialSpeed[],
  limits: readonly LimitFinding[],
): DialSpeed | undefined {
  let fastest: DialSpeed | undefined;
  for (const speed of speeds) {
    if (fastest !== undefined && speed.rpm <= fastest.rpm) continue;
    if (limitsHold(limits, speed)) fastest = speed;
  }
  return fastest;
}

/**
 * What each uncertainty costs in speed, the dearest first: the setting is chosen again with that one removed. Empty if
 * measuring would not change it: on the fastest mark, or if what stops the next mark does not rest on it.
 */
export function uncertaintyCosts(
  context: LimitContext,
  speeds: readonly DialSpeed[],
  limits: readonly LimitFinding[],
  { rpm, nextFaster }: DialSetting,
): UncertaintyCost[] {
  if (nextFaster === undefined) return [];
  const { bit, solid } = context;
  const { breaks, speed } = nextFaster;
  const costs: UncertaintyCost[] = [];
  const note = (code: UncertaintyCost["code"], found: DialSpeed | undefined) => {
    if (found !== undefined && found.rpm > rpm) costs.push({ code, gainRpm: found.rpm - rpm });
  };
  if (limitsHold(limits, measured(speed))) {
    note("dial", fastestThatHolds(speeds.map(measured), limits));
  }
  if (solid.massSource === "estimated" && breaks.every((name) => mayRise(name, "mass"))) {
    const weighed = { ...context, massHighG: solid.massG, headMassHighG: solid.headMassG };
    note("mass", fastestThatHolds(speeds, speedCeiling(weighed).limits));
  }
  if (bit.runOutMm === undefined && breaks.every((name) => mayRise(name, "run-out"))) {
    note("run-out", fastestThatHolds(speeds, speedCeiling({ ...context, runOutMm: GOOD_RUN_OUT_MM }).limits));
  }
  return costs.sort((a, b) => b.gainRpm - a.gainRpm);
}

/** The same setting as a tachometer would read it. */
function measured({ mark, rpm, basis }: DialSpeed): DialSpeed {
  return { mark, rpm, rpmHighest: rpm, basis };
}
