import Type from "typebox";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf, requireMatch } from "../http/conditional.ts";
import { requireNamed } from "../http/named-records.ts";
import { idFilter, listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf, type Write } from "../http/write.ts";
import type { RouterReads } from "../routers/reads.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { changeCollet, createCollet } from "./decide.ts";
import {
  COLLET_SCHEMAS,
  ColletChangeSchema,
  ColletPageSchema,
  ColletSchema,
  NewColletSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"collet">;
  readonly routers: RouterReads;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const ColletPath = Type.Object({ colletId: Type.String({ description: "Id of a collet." }) });

export function colletRoutes(app: App, { reads, routers, write, answerOnce, now }: Parts): void {
  for (const schema of COLLET_SCHEMAS) app.addSchema(schema);
  const common = { scope: "routers:read", tag: "collets" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/collets",
      operationId: "listCollets",
      summary: "List the collets of the routers",
      page: ColletPageSchema,
      filters: { routerId: idFilter("Of this router.") },
    },
    (afterId, most, { routerId }) => reads.page(afterId, most, { routerId }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/collets/:colletId",
      operationId: "getCollet",
      summary: "Read a collet",
      record: ColletSchema,
      noun: "collet",
      parameter: "colletId",
    },
    reads.find,
  );

  app.post(
    "/v1/collets",
    {
      config: { scope: "routers:write", operation: "create" },
      schema: {
        operationId: "createCollet",
        tags: ["collets"],
        summary: "Enter a collet; a size whose every collet is held or retired is not used",
        body: ref(NewColletSchema),
        response: { 201: ref(ColletSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { routerId } = request.body;
        await requireNamed([{ pointer: "/routerId", noun: "router", id: routerId, reads: routers }]);
        const stamp = stampOf(request, now());
        const { record, change } = createCollet(newId("collet"), request.body, stamp.at);
        const headers = { Location: `/v1/collets/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], headers, body: record };
      }),
  );

  app.patch(
    "/v1/collets/:colletId",
    {
      config: { scope: "routers:write", operation: "change" },
      schema: {
        operationId: "updateCollet",
        tags: ["collets"],
        summary: "Change a collet, or release one that was held",
        params: ColletPath,
        body: ref(ColletChangeSchema),
        response: { 200: ref(ColletSchema) },
      },
    },
    async (request, reply) => {
      const { colletId } = request.params;
      const current = requireFound("collet", colletId, await reads.find(colletId));
      requireMatch(request, current.version);
      const stamp = stampOf(request, now());
      const { record, change } = changeCollet(current, request.body, stamp.at);
      await write({ stamp, changes: [change] });
      reply.header("ETag", etagOf(record.version));
      return record;
    },
  );
}
