import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import { POLICY_RULES, POLICY_SCHEMAS, PolicyRulesSchema } from "./schema.ts";

export function policyRoutes(app: App): void {
  for (const schema of POLICY_SCHEMAS) app.addSchema(schema);

  app.get(
    "/v1/policy",
    {
      config: { scope: "plans:compute", operation: "act" },
      schema: {
        operationId: "getPolicy",
        tags: ["policy"],
        summary: "Read every threshold, with its reason and source",
        response: { 200: ref(PolicyRulesSchema) },
      },
    },
    async () => POLICY_RULES,
  );
}
