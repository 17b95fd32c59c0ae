import { DomainError, runOutFaults } from "@rimwise/domain";
import { callerOf } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import { requireColletOf } from "../collets/decide.ts";
import { collets } from "../collets/kind.ts";
import type { App } from "../http/app-type.ts";
import { withoutUndefined } from "../http/given.ts";
import { happenedAt } from "../http/moment.ts";
import { requireNamed } from "../http/named-records.ts";
import { listRecordsRoute, readRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { createRoute } from "../http/write-routes.ts";
import { routers } from "../routers/kind.ts";
import { creation, newRecord } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import { runOutKind, runOuts } from "./kind.ts";
import {
  NewRunOutSchema,
  RUN_OUT_SCHEMAS,
  RunOutPageSchema,
  type RunOutRecord,
  RunOutSchema,
} from "./schema.ts";

const READ = { scope: "routers:read", tag: "runOutReadings", of: runOuts } as const;

export function runOutRoutes(app: App, doors: Doors): void {
  for (const schema of RUN_OUT_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/run-out-readings",
    operationId: "listRunOutReadings",
    summary: "List run-out readings of bits as clamped in routers",
    page: RunOutPageSchema,
    filters: {
      bitId: "Of this bit.",
      routerId: "In this router.",
    },
  });

  readRoute(app, doors, {
    ...READ,
    path: "/v1/run-out-readings/:runOutReadingId",
    parameters: { runOutReadingId: "a run-out reading" },
    operationId: "getRunOutReading",
    summary: "Read a run-out reading",
  });

  createRoute(
    app,
    doors,
    {
      scope: "routers:write",
      tag: "runOutReadings",
      path: "/v1/run-out-readings",
      operationId: "createRunOutReading",
      summary: "Enter a bit's run-out in one router; plans for the two use the latest",
      body: NewRunOutSchema,
      answer: RunOutSchema,
    },
    function* ({ body: { readAt, ...given }, request, at }) {
      const unlikely = runOutFaults(given.runOutMm);
      if (unlikely.length > 0) throw new DomainError(unlikely);
      const { bitId, routerId, colletId } = given;
      yield* requireNamed([
        { pointer: "/bitId", id: bitId, of: bits },
        { pointer: "/routerId", id: routerId, of: routers },
        { pointer: "/colletId", id: colletId, of: collets },
      ]);
      if (colletId !== undefined) requireColletOf(routerId, yield* collets.find(colletId));
      const { personId } = callerOf(request);
      const fields = withoutUndefined({ personId, ...given, readAt: happenedAt(readAt, at, "/readAt") });
      const record: RunOutRecord = newRecord(newId(runOutKind.idPrefix), fields, at);
      return { changes: [creation(runOutKind, record)], answer: record };
    },
  );
}
