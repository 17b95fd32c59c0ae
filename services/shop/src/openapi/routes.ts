import Type from "typebox";
import type { App } from "../http/app-type.ts";
import type { ApiDocument } from "./document.ts";

export function documentRoutes(app: App, { document }: { document: () => ApiDocument }): void {
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
    async () => document(),
  );
}
