import type { App } from "../http/app-type.ts";
import { etagOf, requireMatch } from "../http/conditional.ts";
import { ref } from "../http/reference.ts";
import { stampOf, type Write } from "../http/write.ts";
import { creation, nextVersion, replacement } from "../store/changes.ts";
import type { RecordReads } from "../store/record-reads.ts";
import {
  SHOP_POLICY_ID,
  SHOP_POLICY_SCHEMAS,
  ShopPolicyChangeSchema,
  type ShopPolicyRecord,
  ShopPolicySchema,
  UNTOUCHED,
} from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"shop-policy">;
  readonly write: Write;
  readonly now: () => Date;
};

export function shopPolicyRoutes(app: App, { reads, write, now }: Parts): void {
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
      const current = (await reads.find(SHOP_POLICY_ID)) ?? UNTOUCHED;
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
        summary: "Tighten the policy of every plan; settings that come out otherwise lapse",
        body: ref(ShopPolicyChangeSchema),
        response: { 200: ref(ShopPolicySchema) },
      },
    },
    async (request, reply) => {
      const kept = await reads.find(SHOP_POLICY_ID);
      const current = kept ?? UNTOUCHED;
      requireMatch(request, current.version);
      const stamp = stampOf(request, now());
      const { layer } = request.body;
      const record: ShopPolicyRecord = { ...nextVersion(current, stamp.at), layer };
      const first = { ...record, createdAt: stamp.at };
      const change =
        kept === undefined ? creation("shop-policy", first) : replacement("shop-policy", kept, record);
      await write({ stamp, changes: [change] });
      reply.header("ETag", etagOf(record.version));
      return kept === undefined ? first : record;
    },
  );
}
