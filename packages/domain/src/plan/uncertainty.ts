import { type LimitFinding, limitsBroken, speedCeiling } from "../limit/ceiling.ts";
import type { LimitContext } from "../limit/limit.ts";
import type { DialSpeed } from "../router/dial.ts";

/** Speed that one uncertainty costs: what the dial could be set to if it were gone. */
export type UncertaintyCost = {
  readonly code: "dial" | "mass" | "run-out";
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
    if (limitsBroken(limits, speed).length === 0) fastest = speed;
  }
  return fastest;
}

/**
 * What each uncertainty costs in speed, the dearest first: the plan is made again with that one removed. Empty
 * where measuring would not change the setting.
 */
export function uncertaintyCosts(
  context: LimitContext,
  speeds: readonly DialSpeed[],
  limits: readonly LimitFinding[],
  chosenRpm: number,
): UncertaintyCost[] {
  const { bit, solid } = context;
  const costs: UncertaintyCost[] = [];
  const note = (code: UncertaintyCost["code"], found: DialSpeed | undefined) => {
    if (found !== undefined && found.rpm > chosenRpm) costs.push({ code, gainRpm: found.rpm - chosenRpm });
  };
  if (speeds.length > 1) note("dial", fastestThatHolds(speeds.map(measured), limits));
  if (solid.massSource === "estimated") {
    const weighed = { ...context, massHighG: solid.massG, headMassHighG: solid.headMassG };
    note("mass", fastestThatHolds(speeds, speedCeiling(weighed).limits));
  }
  if (bit.runOutMm === undefined) {
    note("run-out", fastestThatHolds(speeds, speedCeiling({ ...context, runOutMm: GOOD_RUN_OUT_MM }).limits));
  }
  return costs.sort((a, b) => b.gainRpm - a.gainRpm);
}

function measured(speed: DialSpeed): DialSpeed {
  return { ...speed, rpmHighest: speed.rpm };
}
