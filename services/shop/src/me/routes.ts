import Type from "typebox";
import { callerOf, mayDo } from "../access/caller.ts";
import { ROLES, SCOPE_NAMES } from "../access/scopes.ts";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import { withoutUndefined } from "../http/given.ts";
import type { Doors } from "../http/routes.ts";

const MeSchema = Type.Object(
  {
    keyId: Type.String({ description: "The key that asks." }),
    role: Type.Enum([...ROLES], { type: "string", description: "Its role." }),
    personId: Type.Optional(Type.String({ description: "The person it belongs to." })),
    scopes: Type.Array(Type.Enum(SCOPE_NAMES, { type: "string" }), { description: "What it may do." }),
  },
  { $id: "Me", description: "Who one is here.", additionalProperties: false },
);

export function meRoutes(app: App, doors: Doors): void {
  app.addSchema(MeSchema);

  askRoute(
    app,
    doors,
    {
      scope: "self:read",
      tag: "me",
      path: "/v1/me",
      operationId: "getMe",
      summary: "Who this key belongs to and what it may do",
      answer: MeSchema,
    },
    ({ request }) => {
      const caller = callerOf(request);
      const { keyId, role, personId } = caller;
      const scopes = SCOPE_NAMES.filter((scope) => mayDo(caller, scope));
      return withoutUndefined({ keyId, role, personId, scopes });
    },
  );
}
