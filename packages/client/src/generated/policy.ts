// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import { changeOptions, type CallOptions, type Caller, type ChangeOptions, type Version } from "../operation.ts";
import type {
  GetPolicyResponse,
  GetShopPolicyResponse,
  SetShopPolicyData,
  SetShopPolicyResponse,
} from "./types.gen.ts";

export function policyOf(caller: Caller) {
  return {
    /** Read every threshold, with its reason and source */
    get: (options?: CallOptions) =>
      caller.send<GetPolicyResponse>(
        { method: "GET", path: "/v1/policy" },
        options,
      ),

    /** Read what this shop tightens for every plan */
    getShop: (options?: CallOptions) =>
      caller.send<GetShopPolicyResponse>(
        { method: "GET", path: "/v1/shop-policy" },
        options,
      ),

    /** Tighten the policy of every plan; settings whose plan changes lapse */
    setShop: (body: SetShopPolicyData["body"], version: Version | ChangeOptions) =>
      caller.send<SetShopPolicyResponse>(
        { method: "PUT", path: "/v1/shop-policy", body, isWrite: true },
        changeOptions(version),
      ),
  };
}
