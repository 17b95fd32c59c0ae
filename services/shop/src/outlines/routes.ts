import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import type { Doors } from "../http/routes.ts";
import { notValid } from "../problems/problem.ts";
import { convertPath } from "./convert.ts";
import { ConvertedOutlineSchema, OUTLINE_SCHEMAS, OutlinePathSchema } from "./schema.ts";

/** Register after the bits: their forms are part of the answer. */
export function outlineRoutes(app: App, doors: Doors): void {
  for (const schema of OUTLINE_SCHEMAS) app.addSchema(schema);

  askRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "outlines",
      path: "/v1/outlines/convert",
      operationId: "convertOutline",
      summary: "Turn a drawn outline into the form of a custom bit",
      body: OutlinePathSchema,
      answer: ConvertedOutlineSchema,
    },
    ({ body: { path, unitMm = 1 } }) => {
      const converted = convertPath(path, unitMm);
      if ("form" in converted) return converted;
      throw notValid(converted.faults.map((fault) => ({ in: "body", pointer: "/path", ...fault })));
    },
  );
}
