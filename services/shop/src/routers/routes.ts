import type { App } from "../http/app-type.ts";
import { listRecordsRoute, readRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { changeRoute, createRoute, removeRoute } from "../http/write-routes.ts";
import { newId } from "../store/id.ts";
import { changeRouter, createRouter, removeRouter } from "./decide.ts";
import { routerKind, routers } from "./kind.ts";
import {
  NewRouterSchema,
  ROUTER_SCHEMAS,
  RouterChangeSchema,
  RouterPageSchema,
  RouterSchema,
} from "./schema.ts";

const READ = { scope: "routers:read", tag: "routers", of: routers } as const;
const WRITE = { scope: "routers:write", tag: "routers", of: routers, answer: RouterSchema } as const;

export function routerRoutes(app: App, doors: Doors): void {
  for (const schema of ROUTER_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/routers",
    operationId: "listRouters",
    summary: "List the routers of the shop",
    page: RouterPageSchema,
  });

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/routers",
      operationId: "createRouter",
      summary: "Add a router",
      body: NewRouterSchema,
    },
    ({ body, at }) => {
      const { record, changes } = createRouter(newId(routerKind.idPrefix), body, at);
      return { changes, answer: record };
    },
  );

  readRoute(app, doors, {
    ...READ,
    path: "/v1/routers/:routerId",
    operationId: "getRouter",
    summary: "Read a router",
  });

  changeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/routers/:routerId",
      operationId: "updateRouter",
      summary: "Change a router",
      body: RouterChangeSchema,
    },
    (current, { body, at }) => {
      const { record, changes } = changeRouter(current, body, at);
      return { changes, answer: record };
    },
  );

  removeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/routers/:routerId",
      operationId: "deleteRouter",
      summary: "Remove a router",
      gone: "It is gone; its last state stays in the events.",
    },
    (current) => [removeRouter(current)],
  );
}
