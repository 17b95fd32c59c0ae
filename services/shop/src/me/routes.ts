import Type from "typebox";
import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import { callerOf, mayDo } from "../keys/caller.ts";
import { ROLES, SCOPE_NAMES } from "../keys/scopes.ts";

const MeSchema = Type.Object(
  {
    keyId: Type.String({ description: "The key that asks." }),
    role: Type.Enum([...ROLES], { type: "string", description: "Its role." }),
    personId: Type.Optional(Type.String({ description: "The person it belongs to." })),
    scopes: Type.Array(Type.Enum(SCOPE_NAMES, { type: "string" }), { description: "What it may do." }),
  },
  { $id: "Me", description: "Who one is here.", additionalProperties: false },
);

export function meRoutes(app: App): void {
  app.addSchema(MeSchema);

  app.get(
    "/v1/me",
    {
      config: { scope: "self:read", operation: "act" },
      schema: {
        operationId: "getMe",
        tags: ["me"],
        summary: "Who this key belongs to and what it may do",
        response: { 200: ref(MeSchema) },
      },
    },
    async (request) => {
      const caller = callerOf(request);
      const { keyId, role, personId } = caller;
      const scopes = SCOPE_NAMES.filter((scope) => mayDo(caller, scope));
      return { keyId, role, ...(personId !== undefined && { personId }), scopes };
    },
  );
}
