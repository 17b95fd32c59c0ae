import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import { notValid } from "../problems/problem.ts";
import { convertPath } from "./convert.ts";
import { ConvertedOutlineSchema, OUTLINE_SCHEMAS, OutlinePathSchema } from "./schema.ts";

/** Register after the bits: their forms are part of the answer. */
export function outlineRoutes(app: App): void {
  for (const schema of OUTLINE_SCHEMAS) app.addSchema(schema);

  app.post(
    "/v1/outlines/convert",
    {
      config: { scope: "plans:compute", operation: "act" },
      schema: {
        operationId: "convertOutline",
        tags: ["outlines"],
        summary: "Turn a drawn outline into the form of a custom bit",
        body: ref(OutlinePathSchema),
        response: { 200: ref(ConvertedOutlineSchema) },
      },
    },
    async ({ body: { path, unitMm = 1 } }) => {
      const converted = convertPath(path, unitMm);
      if ("form" in converted) return converted;
      throw notValid(converted.faults.map((fault) => ({ in: "body", pointer: "/path", ...fault })));
    },
  );
}
