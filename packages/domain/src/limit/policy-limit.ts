import { defineLimit } from "./limit.ts";

/** What the shop, the class or the request allows. */
export const policyLimit = defineLimit({
  name: "policy",
  strength: "hard",
  formula: "n ≤ the speed allowed",
  source: "the shop's, the class's or the request's policy",
  figure: ({ policy: { speedMaxRpm } }) => ({ rpm: speedMaxRpm, values: { speedMaxRpm } }),
  raisedBy: () => ({ code: "ask-in-charge" }),
});
