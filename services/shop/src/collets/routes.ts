import type { App } from "../http/app-type.ts";
import { requireNamed } from "../http/named-records.ts";
import { listRecordsRoute, readRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { changeRoute, createRoute } from "../http/write-routes.ts";
import { routers } from "../routers/kind.ts";
import { newId } from "../store/id.ts";
import { changeCollet, createCollet } from "./decide.ts";
import { colletKind, collets } from "./kind.ts";
import {
  COLLET_SCHEMAS,
  ColletChangeSchema,
  ColletPageSchema,
  ColletSchema,
  NewColletSchema,
} from "./schema.ts";

const READ = { scope: "routers:read", tag: "collets", of: collets } as const;
const WRITE = { scope: "routers:write", tag: "collets", of: collets, answer: ColletSchema } as const;

export function colletRoutes(app: App, doors: Doors): void {
  for (const schema of COLLET_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/collets",
    operationId: "listCollets",
    summary: "List the collets of the routers",
    page: ColletPageSchema,
    filters: { routerId: "Of this router." },
  });

  readRoute(app, doors, {
    ...READ,
    path: "/v1/collets/:colletId",
    operationId: "getCollet",
    summary: "Read a collet",
  });

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/collets",
      operationId: "createCollet",
      summary: "Enter a collet; a size whose every collet is held or retired is not used",
      body: NewColletSchema,
    },
    function* ({ body, at }) {
      yield* requireNamed([{ pointer: "/routerId", id: body.routerId, of: routers }]);
      const { record, changes } = createCollet(newId(colletKind.idPrefix), body, at);
      return { changes, answer: record };
    },
  );

  changeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/collets/:colletId",
      operationId: "updateCollet",
      summary: "Change a collet, or release one that was held",
      body: ColletChangeSchema,
    },
    (current, { body, at }) => {
      const { record, changes } = changeCollet(current, body, at);
      return { changes, answer: record };
    },
  );
}
