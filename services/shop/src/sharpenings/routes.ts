import { callerOf } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import { listRecordsRoute, readRoute, requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { createRoute } from "../http/write-routes.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { newId } from "../store/id.ts";
import { uses } from "../uses/kind.ts";
import { sharpenBit } from "./decide.ts";
import { EdgeSchema, edgeOf } from "./edge.ts";
import { sharpeningKind, sharpenings } from "./kind.ts";
import { NewSharpeningSchema, SHARPENING_SCHEMAS, SharpeningPageSchema, SharpeningSchema } from "./schema.ts";

const READ = { scope: "sharpenings:read", tag: "sharpenings", of: sharpenings } as const;

/** Uses and sharpenings that an estimate looks back on. */
const MOST_USES = 5000;
const MOST_SHARPENINGS = 50;

export function sharpeningRoutes(app: App, doors: Doors): void {
  for (const schema of [...SHARPENING_SCHEMAS, EdgeSchema]) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/sharpenings",
    operationId: "listSharpenings",
    summary: "List sharpenings, with what bits measured before and after",
    page: SharpeningPageSchema,
    filters: { bitId: "Of this bit." },
  });

  readRoute(app, doors, {
    ...READ,
    path: "/v1/sharpenings/:sharpeningId",
    operationId: "getSharpening",
    summary: "Read a sharpening",
  });

  askRoute(
    app,
    doors,
    {
      ...READ,
      tag: "bits",
      path: "/v1/bits/:bitId/edge",
      operationId: "getBitEdge",
      summary: "Estimate what is left of a bit's edge",
      answer: EdgeSchema,
    },
    function* ({ params: { bitId } }) {
      const bit = requireFound(bits.kind, bitId, yield* bits.find(bitId));
      const cut = yield* uses.newest(MOST_USES, { bitId });
      const past = yield* sharpenings.newest(MOST_SHARPENINGS, { bitId });
      return edgeOf(bit, cut, past, yield* shopPolicy());
    },
  );

  createRoute(
    app,
    doors,
    {
      scope: "sharpenings:write",
      tag: "sharpenings",
      path: "/v1/bits/:bitId/sharpenings",
      operationId: "createSharpening",
      summary: "Enter a sharpening; the bit has its new dimensions from then on",
      body: NewSharpeningSchema,
      answer: SharpeningSchema,
      location: ({ id }) => `${sharpeningKind.path}/${id}`,
    },
    function* ({ params: { bitId }, body, request, at }) {
      const bit = requireFound(bits.kind, bitId, yield* bits.find(bitId));
      const past = yield* uses.newest(MOST_USES, { bitId });
      const { personId } = callerOf(request);
      const id = newId(sharpeningKind.idPrefix);
      const { record, changes } = sharpenBit(id, bit, past, body, personId, at);
      return { changes, answer: record };
    },
  );
}
