import { type Policy, type PolicyLayer, strictestPolicy } from "@rimwise/domain";

/** A shop has one layer and some courses; requests may bring any, so no more than these are remembered. */
const MOST_REMEMBERED = 200;

/** What tightens the defaults: the shop's layer, and those of a course or a request. */
export type Layers = readonly [shop: PolicyLayer, ...others: PolicyLayer[]];

const remembered = new Map<string, Policy>();

/** The strictest of the defaults and these layers, the shop's first. The same layers give the same object, which most plans then share. */
export function policyInForce(...layers: Layers): Policy {
  const given = layers.filter((layer) => Object.keys(layer).length > 0);
  const name = JSON.stringify(given);
  const known = remembered.get(name);
  if (known !== undefined) return known;
  const policy = strictestPolicy(...given);
  if (remembered.size === MOST_REMEMBERED) remembered.clear();
  remembered.set(name, policy);
  return policy;
}
