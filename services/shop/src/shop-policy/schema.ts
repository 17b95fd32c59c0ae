import Type, { type Static } from "typebox";
import { keptFields } from "../http/fields.ts";
import { ref } from "../http/reference.ts";
import { PolicyLayerSchema } from "../policy/layer-schema.ts";

/** The one row of its kind. */
export const SHOP_POLICY_ID = "policy_shop";

const fields = {
  layer: ref(PolicyLayerSchema),
  areLoansShown: Type.Optional(
    Type.Boolean({
      description: "Whether members see who has which bit, not only their own loans. Default: no.",
    }),
  ),
};

export const ShopPolicyChangeSchema = Type.Object(fields, {
  $id: "ShopPolicyChange",
  description: "The whole of the shop's policy from now on; what is not named goes back to its default.",
  additionalProperties: false,
});

export const ShopPolicySchema = Type.Object(
  { id: Type.String({ description: "Always the same." }), ...fields, ...keptFields },
  {
    $id: "ShopPolicy",
    description: "What this shop tightens for every plan, and what its members see.",
    additionalProperties: false,
  },
);

/** The components this resource answers and takes. */
export const SHOP_POLICY_SCHEMAS = [ShopPolicyChangeSchema, ShopPolicySchema];

export type ShopPolicyRecord = Static<typeof ShopPolicySchema>;

/** What holds before anybody tightened anything. */
export const UNTOUCHED: ShopPolicyRecord = {
  id: SHOP_POLICY_ID,
  layer: {},
  createdAt: "1970-01-01T00:00:00.000Z",
  updatedAt: "1970-01-01T00:00:00.000Z",
  version: 1,
};
