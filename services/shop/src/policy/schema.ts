import { RULE_NAMES, RULES } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { ref } from "../http/reference.ts";

const closed = { additionalProperties: false } as const;

const PolicyRuleSchema = Type.Object(
  {
    name: Type.Enum([...RULE_NAMES], {
      type: "string",
      description: "The field that tightens it in a request.",
    }),
    default: Type.Number({ description: "In force unless somebody tightens it." }),
    unit: Type.String({ description: "Unit of its values." }),
    stricter: Type.Enum(["lower", "higher"], {
      type: "string",
      description: "Which of two values is the stricter.",
    }),
    min: Type.Number({ description: "Least value accepted." }),
    max: Type.Number({ description: "Greatest value accepted." }),
    meaning: Type.String({ description: "What it holds back." }),
    source: Type.Enum(["standard", "common practice", "ours"], {
      type: "string",
      description: "Where it comes from.",
    }),
    reason: Type.String({ description: "Why it is what it is." }),
  },
  { $id: "PolicyRule", description: "One threshold of judgement.", ...closed },
);

export const PolicyRulesSchema = Type.Object(
  { data: Type.Array(ref(PolicyRuleSchema), { description: "Every rule, by subject." }) },
  { $id: "PolicyRules", description: "Every threshold a plan is judged by.", ...closed },
);

/** The components this resource answers. */
export const POLICY_SCHEMAS = [PolicyRuleSchema, PolicyRulesSchema];

/** The domain's rules as they go over the wire. */
export const POLICY_RULES: Static<typeof PolicyRulesSchema> = {
  data: RULE_NAMES.map((name) => ({ name, ...RULES[name] })),
};
