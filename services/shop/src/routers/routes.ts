import Type from "typebox";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf, requireMatch } from "../http/conditional.ts";
import { listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf, type Write } from "../http/write.ts";
import { newId } from "../store/id.ts";
import { changeRouter, createRouter, removeRouter } from "./decide.ts";
import type { RouterReads } from "./reads.ts";
import {
  NewRouterSchema,
  ROUTER_SCHEMAS,
  RouterChangeSchema,
  RouterPageSchema,
  RouterSchema,
} from "./schema.ts";

type Parts = { reads: RouterReads; write: Write; answerOnce: AnswerOnce; now: () => Date };

const RouterPath = Type.Object({ routerId: Type.String({ description: "Id of a router." }) });

export function routerRoutes(app: App, { reads, write, answerOnce, now }: Parts): void {
  for (const schema of ROUTER_SCHEMAS) app.addSchema(schema);

  const common = { scope: "routers:read", tag: "routers" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/routers",
      operationId: "listRouters",
      summary: "List the routers of the shop",
      page: RouterPageSchema,
    },
    (afterId, most) => reads.page(afterId, most),
  );

  app.post(
    "/v1/routers",
    {
      config: { scope: "routers:write", operation: "create" },
      schema: {
        operationId: "createRouter",
        tags: ["routers"],
        summary: "Add a router",
        body: ref(NewRouterSchema),
        response: { 201: ref(RouterSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, () => {
        const stamp = stampOf(request, now());
        const { record, change } = createRouter(newId("router"), request.body, stamp.at);
        const headers = { Location: `/v1/routers/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], headers, body: record };
      }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/routers/:routerId",
      operationId: "getRouter",
      summary: "Read a router",
      record: RouterSchema,
      noun: "router",
      parameter: "routerId",
    },
    reads.find,
  );

  app.patch(
    "/v1/routers/:routerId",
    {
      config: { scope: "routers:write", operation: "change" },
      schema: {
        operationId: "updateRouter",
        tags: ["routers"],
        summary: "Change a router",
        params: RouterPath,
        body: ref(RouterChangeSchema),
        response: { 200: ref(RouterSchema) },
      },
    },
    async (request, reply) => {
      const current = requireFound(
        "router",
        request.params.routerId,
        await reads.find(request.params.routerId),
      );
      requireMatch(request, current.version);
      const stamp = stampOf(request, now());
      const { record, change } = changeRouter(current, request.body, stamp.at);
      await write({ stamp, changes: [change] });
      reply.header("ETag", etagOf(record.version));
      return record;
    },
  );

  app.delete(
    "/v1/routers/:routerId",
    {
      config: { scope: "routers:write", operation: "remove" },
      schema: {
        operationId: "deleteRouter",
        tags: ["routers"],
        summary: "Remove a router",
        params: RouterPath,
        response: { 204: Type.Null({ description: "It is gone; its last state stays in the events." }) },
      },
    },
    async (request, reply) => {
      const current = requireFound(
        "router",
        request.params.routerId,
        await reads.find(request.params.routerId),
      );
      requireMatch(request, current.version);
      await write({ stamp: stampOf(request, now()), changes: [removeRouter(current)] });
      return reply.code(204).send(null);
    },
  );
}
