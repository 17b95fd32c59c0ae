// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import { changeOptions, type AnyOptions, type CallOptions, type Caller, type ChangeOptions, type ConditionalOptions, type RecordVersion } from "../operation.ts";
import type { NotModified } from "../read.ts";
import type { PolicyRules, ShopPolicy, ShopPolicyChange } from "./types.gen.ts";

/** The thresholds plans are judged by. */
export interface PolicyResource {
  /**
   * Read every threshold, with its reason and source
   *
   * `GET /v1/policy`
   */
  get(options?: CallOptions): Answer<PolicyRules>;

  /**
   * Read what this shop tightens for every plan
   *
   * `GET /v1/shop-policy`
   */
  getShop(options: ConditionalOptions): Answer<ShopPolicy | NotModified>;
  /**
   * Read what this shop tightens for every plan
   *
   * `GET /v1/shop-policy`
   */
  getShop(options?: CallOptions): Answer<ShopPolicy>;

  /**
   * Tighten the policy of every plan; settings whose plan changes lapse
   *
   * `PUT /v1/shop-policy`
   */
  setShop(body: ShopPolicyChange, version: RecordVersion | ChangeOptions): Answer<ShopPolicy>;
}

export function policyOf(caller: Caller): PolicyResource {
  return {
    get: (options) =>
      caller.send({ path: "/v1/policy" }, options),
    getShop: (options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/shop-policy" }, options),
    setShop: (body, version) =>
      caller.send({ method: "PUT", path: "/v1/shop-policy", body }, changeOptions(version)),
  };
}
