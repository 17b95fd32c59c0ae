import { rpmOf } from "../bit/rotation.ts";
import { defineLimit } from "./limit.ts";

/** The pull on one brazed tip at the rim. Shown for every bit; it limits if the policy sets a force. */
export const tipRetention = defineLimit({
  name: "tip-retention",
  strength: "hard",
  formula: "n from F = m·r·ω² on one tip at the rim",
  source: "mechanics; tip mass and force allowed are ours",
  figure: ({ solid: { rimRadiusMm }, policy: { tipMassAssumedG, tipForceMaxN } }) => ({
    rpm: rpmOf(Math.sqrt(tipForceMaxN / ((tipMassAssumedG / 1000) * (rimRadiusMm / 1000)))),
    values: { tipMassAssumedG, tipForceMaxN, rimRadiusMm },
  }),
  raisedBy: () => ({ code: "ask-in-charge" }),
});
