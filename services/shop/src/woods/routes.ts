import { ENGINE_VERSION } from "@rimwise/domain";
import Type from "typebox";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { PageQuery, sendPage } from "../http/paging.ts";
import { requireFound } from "../http/read-routes.ts";
import { ref } from "../http/reference.ts";
import { woods } from "./reads.ts";
import { WOOD_SCHEMAS, WoodPageSchema, WoodSchema } from "./schema.ts";

const WoodPath = Type.Object({ woodId: Type.String({ description: "Id of a wood or material." }) });

const WoodListQuery = Type.Object(
  {
    ...PageQuery.properties,
    q: Type.Optional(
      Type.String({
        minLength: 1,
        maxLength: 100,
        description: 'Words of its name, its botanical name or its id, such as "cherry" or "quercus".',
      }),
    ),
  },
  { additionalProperties: false },
);

export function woodRoutes(app: App): void {
  for (const schema of WOOD_SCHEMAS) app.addSchema(schema);

  app.get(
    "/v1/woods",
    {
      config: { scope: "woods:read", operation: "list" },
      schema: {
        operationId: "listWoods",
        tags: ["woods"],
        summary: "List woods and materials",
        querystring: WoodListQuery,
        response: { 200: ref(WoodPageSchema) },
      },
    },
    (request, reply) =>
      sendPage(request, reply, request.query, async (afterId, most) =>
        woods.page(afterId, most, request.query.q),
      ),
  );

  app.get(
    "/v1/woods/:woodId",
    {
      config: { scope: "woods:read", operation: "read" },
      schema: {
        operationId: "getWood",
        tags: ["woods"],
        summary: "Read a wood or material",
        params: WoodPath,
        response: { 200: ref(WoodSchema) },
      },
    },
    async (request, reply) => {
      const { woodId } = request.params;
      const wood = requireFound(woods.kind, woodId, woods.find(woodId));
      // Woods change only with the program.
      reply.header("ETag", etagOf(ENGINE_VERSION));
      return wood;
    },
  );
}
