import type { Policy, PolicyLayer } from "@rimwise/domain";
import { policyInForce } from "../policy/in-force.ts";
import type { Question } from "../store/query.ts";
import { shopPolicies } from "./kind.ts";
import { SHOP_POLICY_ID } from "./schema.ts";

/** What the shop tightens for every plan just now. */
export function* shopLayer(): Question<PolicyLayer> {
  return (yield* shopPolicies.find(SHOP_POLICY_ID))?.layer ?? {};
}

/** Whether members see who has which bit. */
export function* areLoansShown(): Question<boolean> {
  return (yield* shopPolicies.find(SHOP_POLICY_ID))?.areLoansShown ?? false;
}

/** The policy of the shop just now. */
export function* shopPolicy(): Question<Policy> {
  return policyInForce(yield* shopLayer());
}
