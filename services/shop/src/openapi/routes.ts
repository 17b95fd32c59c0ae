import Type from "typebox";
import type { App } from "../http/app-type.ts";
import { lazily } from "../http/lazily.ts";
import type { ApiDocument } from "./document.ts";

export function documentRoutes(app: App, { document }: { document: () => ApiDocument }): void {
  // A megabyte that anybody may ask for: written once.
  const bytes = lazily(() => Buffer.from(JSON.stringify(document())));
  app.get(
    "/openapi.json",
    {
      config: { scope: "public", operation: "act" },
      schema: {
        operationId: "getApiDescription",
        tags: ["health"],
        summary: "Read this description",
        response: {
          200: Type.Object({}, { description: "An OpenAPI 3.1 document.", additionalProperties: true }),
        },
      },
    },
    async (_request, reply) => reply.type("application/json; charset=utf-8").send(bytes()),
  );
}
