import { bodyStress } from "./body-stress.ts";
import { criticalSpeed } from "./critical-speed.ts";
import { diameterChart } from "./diameter-chart.ts";
import type { LimitContext, RaisedBy, Unmeasured } from "./limit.ts";
import { markedMaximum } from "./marked-maximum.ts";
import { material } from "./material.ts";
import { policyLimit } from "./policy-limit.ts";
import { rimSpeed } from "./rim-speed.ts";
import { routerTop } from "./router-top.ts";
import { shankStress } from "./shank-stress.ts";
import { tested } from "./tested.ts";
import { tipRetention } from "./tip-retention.ts";
import { unbalance } from "./unbalance.ts";

/** Every limit, one line each. If two give the same speed the earlier one binds. */
export const LIMITS = [
  markedMaximum,
  rimSpeed,
  criticalSpeed,
  unbalance,
  shankStress,
  bodyStress,
  tipRetention,
  policyLimit,
  tested,
  diameterChart,
  material,
  routerTop,
] as const;

export type LimitName = (typeof LIMITS)[number]["name"];

/** One limit on this bit in this router: a union discriminated by `name`, each with the values it came from. */
export type LimitFinding = NonNullable<ReturnType<(typeof LIMITS)[number]["find"]>>;

const RESTS_ON: ReadonlyMap<LimitName, readonly Unmeasured[]> = new Map(
  LIMITS.map(({ name, restsOn }) => [name, restsOn]),
);

export type Ceiling = {
  readonly rpm: number;
  readonly binding: LimitFinding;
  /** What would lift the binding limit. */
  readonly raisedBy: RaisedBy | undefined;
  /** What would hold if the binding limit were lifted. */
  readonly next: LimitFinding | undefined;
  /** Every limit that applies, lowest first: the first one binds. */
  readonly limits: readonly LimitFinding[];
};

/** A nominal speed, and the highest it may actually be. */
type UncertainSpeed = { readonly rpm: number; readonly rpmHighest: number };

/** The ceiling: every limit that applies, ranked, and the least of them. */
export function speedCeiling(context: LimitContext): Ceiling {
  const limits: LimitFinding[] = [];
  for (const { find } of LIMITS) {
    const found = find(context);
    if (found !== undefined) limits.push(found);
  }
  limits.sort((a, b) => a.rpm - b.rpm);
  const [binding, next] = limits;
  if (binding === undefined) throw new Error("the policy limit always applies");
  const raisedBy = LIMITS.find(({ name }) => name === binding.name)?.raisedBy(context);
  return { rpm: binding.rpm, binding, raisedBy, next, limits };
}

/** The limits a speed would break: a hard one by its highest, a guide by its nominal speed. */
export function limitsBroken(limits: readonly LimitFinding[], speed: UncertainSpeed): LimitFinding[] {
  return limits.filter((limit) => isBroken(limit, speed));
}

/** Whether every limit holds at a speed. */
export function limitsHold(limits: readonly LimitFinding[], speed: UncertainSpeed): boolean {
  return !limits.some((limit) => isBroken(limit, speed));
}

function isBroken({ strength, rpm }: LimitFinding, speed: UncertainSpeed): boolean {
  return (strength === "hard" ? speed.rpmHighest : speed.rpm) > rpm;
}

/** Whether measuring this may raise the limit. */
export function mayRise(name: LimitName, measured: Unmeasured): boolean {
  return RESTS_ON.get(name)?.includes(measured) ?? false;
}
