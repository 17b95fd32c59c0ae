import type { BitReads } from "../bits/reads.ts";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { happenedAt } from "../http/moment.ts";
import { requireColletOf, requireNamed } from "../http/named-records.ts";
import { idFilter, listRoute, readRoute } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf } from "../http/write.ts";
import { callerOf } from "../keys/caller.ts";
import type { RouterReads } from "../routers/reads.ts";
import { creation } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import {
  NewRunOutSchema,
  RUN_OUT_SCHEMAS,
  RunOutPageSchema,
  type RunOutRecord,
  RunOutSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"run-out-reading">;
  readonly bits: BitReads;
  readonly routers: RouterReads;
  readonly collets: RecordReads<"collet">;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

export function runOutRoutes(app: App, { reads, bits, routers, collets, answerOnce, now }: Parts): void {
  for (const schema of RUN_OUT_SCHEMAS) app.addSchema(schema);
  const common = { scope: "routers:read", tag: "runOuts" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/run-out-readings",
      operationId: "listRunOuts",
      summary: "List run-out readings of bits as clamped in routers",
      page: RunOutPageSchema,
      filters: {
        bitId: idFilter("Of this bit."),
        routerId: idFilter("In this router."),
      },
    },
    (afterId, most, { bitId, routerId }) => reads.page(afterId, most, { bitId, routerId }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/run-out-readings/:readingId",
      operationId: "getRunOut",
      summary: "Read a run-out reading",
      record: RunOutSchema,
      noun: "run-out reading",
      parameter: "readingId",
    },
    reads.find,
  );

  app.post(
    "/v1/run-out-readings",
    {
      config: { scope: "routers:write", operation: "create" },
      schema: {
        operationId: "createRunOut",
        tags: ["runOuts"],
        summary: "Enter a bit's run-out in one router; plans for the two use the latest",
        body: ref(NewRunOutSchema),
        response: { 201: ref(RunOutSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { readAt, ...given } = request.body;
        await requireNamed([
          { pointer: "/bitId", noun: "bit", id: given.bitId, reads: bits },
          { pointer: "/routerId", noun: "router", id: given.routerId, reads: routers },
          { pointer: "/colletId", noun: "collet", id: given.colletId, reads: collets },
        ]);
        if (given.colletId !== undefined) {
          requireColletOf(given.routerId, await collets.find(given.colletId));
        }
        const stamp = stampOf(request, now());
        const { personId } = callerOf(request);
        const record: RunOutRecord = {
          id: newId("runout"),
          ...(personId !== undefined && { personId }),
          readAt: happenedAt(readAt, stamp.at, "/readAt"),
          ...given,
          createdAt: stamp.at,
          updatedAt: stamp.at,
          version: 1,
        };
        const headers = { Location: `/v1/run-out-readings/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [creation("run-out-reading", record)], headers, body: record };
      }),
  );
}
