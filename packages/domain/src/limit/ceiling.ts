import { bodyStress } from "./body-stress.ts";
import { criticalSpeed } from "./critical-speed.ts";
import { diameterChart } from "./diameter-chart.ts";
import type { LimitContext, LimitFigure, LimitStrength, RaisedBy } from "./limit.ts";
import { markedMaximum } from "./marked-maximum.ts";
import { policyLimit } from "./policy-limit.ts";
import { rimSpeed } from "./rim-speed.ts";
import { routerTop } from "./router-top.ts";
import { shankStress } from "./shank-stress.ts";
import { tested } from "./tested.ts";
import { tipRetention } from "./tip-retention.ts";
import { unbalance } from "./unbalance.ts";

/** Every limit, one line each. Where two give the same speed the earlier one binds. */
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
  routerTop,
] as const;

export type LimitName = (typeof LIMITS)[number]["name"];

/** One limit on this bit in this router. */
export type LimitFinding = LimitFigure & {
  readonly name: LimitName;
  readonly strength: LimitStrength;
  readonly formula: string;
  readonly source: string;
};

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

/** The ceiling: every limit that applies, ranked, and the least of them. */
export function speedCeiling(context: LimitContext): Ceiling {
  const limits: LimitFinding[] = [];
  for (const { name, strength, formula, source, figure } of LIMITS) {
    const found = figure(context);
    if (found === undefined) continue;
    const { rpm, values } = found;
    limits.push({ name, strength, formula, source, rpm, values });
  }
  limits.sort((a, b) => a.rpm - b.rpm);
  const [binding, next] = limits;
  if (binding === undefined) throw new Error("the policy limit always applies");
  const raisedBy = LIMITS.find(({ name }) => name === binding.name)?.raisedBy(context);
  return { rpm: binding.rpm, binding, raisedBy, next, limits };
}

/** The limits a speed would break: a hard one by its highest, a guide by its nominal speed. */
export function limitsBroken(
  limits: readonly LimitFinding[],
  speed: { readonly rpm: number; readonly rpmHighest: number },
): LimitFinding[] {
  return limits.filter(({ strength, rpm }) => (strength === "hard" ? speed.rpmHighest : speed.rpm) > rpm);
}
