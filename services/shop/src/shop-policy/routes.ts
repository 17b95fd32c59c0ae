import type { App } from "../http/app-type.ts";
import { etagOf, requireMatch, staleVersion } from "../http/conditional.ts";
import { ref } from "../http/reference.ts";
import type { Doors } from "../http/routes.ts";
import { stampOf } from "../http/write.ts";
import { creation, nextVersion, replacement } from "../store/changes.ts";
import { shopPolicies, shopPolicyKind } from "./kind.ts";
import {
  SHOP_POLICY_ID,
  SHOP_POLICY_SCHEMAS,
  ShopPolicyChangeSchema,
  ShopPolicySchema,
  UNTOUCHED,
} from "./schema.ts";

/** There is one shop's policy, and it is never created: before anybody tightens anything it is empty. */
export function shopPolicyRoutes(app: App, { answer, answerOnce, now }: Doors): void {
  for (const schema of SHOP_POLICY_SCHEMAS) app.addSchema(schema);

  app.get(
    "/v1/shop-policy",
    {
      config: { scope: "plans:compute", operation: "read" },
      schema: {
        operationId: "getShopPolicy",
        tags: ["policy"],
        summary: "Read what this shop tightens for every plan",
        response: { 200: ref(ShopPolicySchema) },
      },
    },
    async (_request, reply) => {
      const current = (await answer(shopPolicies.find(SHOP_POLICY_ID))) ?? UNTOUCHED;
      reply.header("ETag", etagOf(current.version));
      return current;
    },
  );

  app.put(
    "/v1/shop-policy",
    {
      config: { scope: "policy:write", operation: "change" },
      schema: {
        operationId: "setShopPolicy",
        tags: ["policy"],
        summary: "Tighten the policy of every plan; settings whose plan changes lapse",
        body: ref(ShopPolicyChangeSchema),
        response: { 200: ref(ShopPolicySchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const kept = await answer(shopPolicies.find(SHOP_POLICY_ID));
        const current = kept ?? UNTOUCHED;
        requireMatch(request, current.version);
        const stamp = stampOf(request, now());
        const { areLoansShown: _, ...same } = nextVersion(current, stamp.at);
        const next = { ...same, ...request.body };
        const record = kept === undefined ? { ...next, createdAt: stamp.at } : next;
        const change =
          kept === undefined ? creation(shopPolicyKind, record) : replacement(shopPolicyKind, kept, record);
        const headers = { ETag: etagOf(record.version) };
        return { stamp, changes: [change], status: 200, headers, body: record, ifStale: staleVersion };
      }),
  );
}
