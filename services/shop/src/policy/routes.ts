import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import type { Doors } from "../http/routes.ts";
import { POLICY_RULES, POLICY_SCHEMAS, PolicyRulesSchema } from "./schema.ts";

export function policyRoutes(app: App, doors: Doors): void {
  for (const schema of POLICY_SCHEMAS) app.addSchema(schema);

  askRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "policy",
      path: "/v1/policy",
      operationId: "getPolicy",
      summary: "Read every threshold, with its reason and source",
      answer: PolicyRulesSchema,
    },
    () => POLICY_RULES,
  );
}
