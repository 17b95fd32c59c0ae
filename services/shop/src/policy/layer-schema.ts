import { type PolicyLayer, RULE_NAMES, RULES } from "@rimwise/domain";
import Type from "typebox";

/** Thresholds a request may tighten: one field for each rule of the domain's policy. */
export const PolicyLayerSchema = {
  ...Type.Unsafe<PolicyLayer>(
    Type.Object(
      Object.fromEntries(
        RULE_NAMES.map((name) => {
          const { min, max, unit, meaning, stricter, default: usual } = RULES[name];
          const description = `${meaning} In ${unit}; usually ${usual}, and only ever ${stricter}.`;
          return [name, Type.Optional(Type.Number({ minimum: min, maximum: max, description }))];
        }),
      ),
      { additionalProperties: false },
    ),
  ),
  $id: "PolicyLayer",
  description:
    "Thresholds to tighten for this plan. The strictest of the defaults and these holds; none can be loosened.",
};
