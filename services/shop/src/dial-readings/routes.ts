import { DEFAULT_POLICY, dialSpeeds } from "@rimwise/domain";
import Type from "typebox";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { happenedAt } from "../http/moment.ts";
import { idFilter, listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf } from "../http/write.ts";
import { callerOf } from "../keys/caller.ts";
import { notValid } from "../problems/problem.ts";
import type { RouterReads } from "../routers/reads.ts";
import type { RouterRecord } from "../routers/schema.ts";
import { creation } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import {
  type NewReading,
  NewReadingSchema,
  READING_SCHEMAS,
  ReadingPageSchema,
  type ReadingRecord,
  ReadingSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"dial-reading">;
  readonly routers: RouterReads;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const RouterPath = Type.Object({ routerId: Type.String({ description: "Id of a router." }) });

export function dialReadingRoutes(app: App, { reads, routers, answerOnce, now }: Parts): void {
  for (const schema of READING_SCHEMAS) app.addSchema(schema);
  const common = { scope: "routers:read", tag: "readings" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/dial-readings",
      operationId: "listReadings",
      summary: "List speeds read at the marks of dials, those that have lapsed too",
      page: ReadingPageSchema,
      filters: { routerId: idFilter("Of this router.") },
    },
    (afterId, most, { routerId }) => reads.page(afterId, most, { routerId }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/dial-readings/:readingId",
      operationId: "getReading",
      summary: "Read a dial reading",
      record: ReadingSchema,
      noun: "dial reading",
      parameter: "readingId",
    },
    reads.find,
  );

  app.post(
    "/v1/routers/:routerId/dial-readings",
    {
      config: { scope: "routers:write", operation: "create" },
      schema: {
        operationId: "createReading",
        tags: ["readings"],
        summary: "Enter the speed read at one mark; it counts until it lapses or a newer one contradicts it",
        params: RouterPath,
        body: ref(NewReadingSchema),
        response: { 201: ref(ReadingSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { routerId } = request.params;
        const router = requireFound("router", routerId, await routers.find(routerId));
        requireMark(router, request.body);
        const stamp = stampOf(request, now());
        const { personId } = callerOf(request);
        const { readAt, ...given } = request.body;
        const record: ReadingRecord = {
          id: newId("reading"),
          routerId,
          ...(personId !== undefined && { personId }),
          readAt: happenedAt(readAt, stamp.at, "/readAt"),
          ...given,
          createdAt: stamp.at,
          updatedAt: stamp.at,
          version: 1,
        };
        const headers = { Location: `/v1/dial-readings/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [creation("dial-reading", record)], headers, body: record };
      }),
  );
}

function requireMark(router: RouterRecord, { mark }: NewReading): void {
  const marks = dialSpeeds(router, DEFAULT_POLICY).flatMap((each) => each.mark ?? []);
  if (marks.includes(mark)) return;
  const accepted =
    marks.length > 0
      ? `a mark from ${marks[0]} to ${marks.at(-1)} that the dial can be set to`
      : "nothing: describe the router's dial first";
  throw notValid([
    { in: "body", pointer: "/mark", message: "The router's dial has no such mark.", accepted },
  ]);
}
