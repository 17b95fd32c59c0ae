import type { LimitName } from "../../../limit/ceiling.ts";
import type { RaisedBy } from "../../../limit/limit.ts";
import type { UncertaintyCost } from "../../../plan/uncertainty.ts";
import type { SpeedBasis } from "../../../router/dial.ts";

/** What each limit holds the speed for. Their formulas and sources stand with them. */
export const LIMIT_MEANINGS: Readonly<Record<LimitName, string>> = {
  "marked-maximum": "The maximum speed that is marked on the tool.",
  "rim-speed": "How fast the rim may move.",
  "critical-speed": "How near the bit may come to the speed at which it rings on its shank.",
  unbalance: "How hard the unbalance may pull to the side.",
  "shank-stress": "What the shank bears beside the heaviest pass.",
  "body-stress": "What the body bears from spinning alone.",
  "tip-retention": "How hard a tip may pull on its braze.",
  policy: "What the policy in force allows.",
  tested: "What speed trials of this bit in this router allow.",
  "diameter-chart": "What the trade's chart gives for the diameter.",
  material: "How fast a material that melts may be cut.",
  router: "The router's top speed.",
};

/** What would lift the binding limit. */
export const RAISED_BY_MEANINGS: Readonly<Record<RaisedBy["code"], string>> = {
  "smaller-bit": "A bit of smaller diameter.",
  "ask-in-charge": "Only the person in charge may change it.",
  "faster-router": "A router that turns faster.",
  "less-run-out": "Less run-out in the collet, measured.",
  "thicker-shank": "A bit with a thicker shank.",
  "less-stick-out": "The shank seated deeper.",
  "try-one-step-faster": "A trial one step faster that runs free of vibration.",
};

/** What not knowing costs speed. */
export const UNCERTAINTY_MEANINGS: Readonly<Record<UncertaintyCost["code"], string>> = {
  dial: "The dial was not measured with a tachometer.",
  mass: "The bit was not weighed.",
  "run-out": "The run-out was not measured in the collet.",
};

/** What the speed at a mark rests on. */
export const SPEED_BASIS_MEANINGS: Readonly<Record<SpeedBasis, string>> = {
  reading: "A tachometer reading at this mark.",
  "between-readings": "Readings at the marks on both sides.",
  range: "The router's range, spread over its marks.",
  "single-speed": "The router's only speed.",
  "no-dial": "The slowest or the fastest speed of a router whose dial is not described.",
};
