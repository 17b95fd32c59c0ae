import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { ShopPolicySchema } from "./schema.ts";

export const shopPolicyKind = defineKind({
  type: "shop-policy",
  noun: "shop policy",
  idPrefix: "policy",
  path: "/v1/shop-policy",
  schema: ShopPolicySchema,
  table: "shop_policies",
});

export const shopPolicies = recordQueries(shopPolicyKind);
