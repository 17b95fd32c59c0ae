import type { Fault } from "../quantity/fault.ts";
import { rangeFaults } from "../quantity/range.ts";
import { RULES } from "./rules.ts";

export type RuleName = keyof typeof RULES;

/** Every threshold a plan is judged by. */
export type Policy = { readonly [Name in RuleName]: number };

/** Some thresholds, tightened by a shop, a course or one request. */
export type PolicyLayer = { readonly [Name in RuleName]?: number | undefined };

export const RULE_NAMES: readonly RuleName[] = Object.keys(RULES).filter(isRuleName);

/** The policy with nothing set by anybody. */
export const DEFAULT_POLICY: Policy = strictestPolicy();

/**
 * The strictest of the defaults and every layer, threshold by threshold: a layer can never loosen one.
 * @example
 * strictestPolicy({ rimSpeedMaxMPerS: 40 }, { rimSpeedMaxMPerS: 50 }).rimSpeedMaxMPerS // → 40
 */
export function strictestPolicy(...layers: readonly PolicyLayer[]): Policy {
  const policy: { [Name in RuleName]?: number } = {};
  for (const name of RULE_NAMES) {
    let value: number = RULES[name].default;
    for (const layer of layers) {
      const given = layer[name];
      if (given !== undefined && isStricter(name, given, value)) value = given;
    }
    policy[name] = value;
  }
  if (!isWhole(policy)) throw new Error("a rule without a value");
  return policy;
}

/**
 * Two layers as one that is as strict as both.
 * @example
 * stricterLayer({ rimSpeedMaxMPerS: 40 }, { rimSpeedMaxMPerS: 50, finishBiteMm: 0.5 }) // → { rimSpeedMaxMPerS: 40, finishBiteMm: 0.5 }
 */
export function stricterLayer(one: PolicyLayer, other: PolicyLayer): PolicyLayer {
  const layer: { [Name in RuleName]?: number } = {};
  for (const name of RULE_NAMES) {
    const [mine, theirs] = [one[name], other[name]];
    const value =
      mine === undefined ? theirs : theirs !== undefined && isStricter(name, theirs, mine) ? theirs : mine;
    if (value !== undefined) layer[name] = value;
  }
  return layer;
}

/**
 * Thresholds outside their range. Pointers start at the layer.
 * @example
 * policyFaults({ rimSpeedMaxMPerS: 900 })[0].code // → "out-of-range"
 */
export function policyFaults(layer: PolicyLayer): Fault[] {
  return RULE_NAMES.flatMap((name) => rangeFaults(`/${name}`, layer[name], RULES[name]));
}

function isStricter(name: RuleName, given: number, value: number): boolean {
  return RULES[name].stricter === "lower" ? given < value : given > value;
}

function isRuleName(name: string): name is RuleName {
  return Object.hasOwn(RULES, name);
}

function isWhole(layer: PolicyLayer): layer is Policy {
  return RULE_NAMES.every((name) => layer[name] !== undefined);
}
