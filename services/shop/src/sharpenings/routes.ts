import { BitPath } from "../bits/path.ts";
import type { BitReads } from "../bits/reads.ts";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { idFilter, listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf } from "../http/write.ts";
import { callerOf } from "../keys/caller.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { sharpenBit } from "./decide.ts";
import { EdgeSchema, edgeOf } from "./edge.ts";
import { NewSharpeningSchema, SHARPENING_SCHEMAS, SharpeningPageSchema, SharpeningSchema } from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"sharpening">;
  readonly uses: RecordReads<"use">;
  readonly bits: BitReads;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

/** Uses and sharpenings that an estimate looks back on. */
const MOST_USES = 5000;
const MOST_SHARPENINGS = 50;

export function sharpeningRoutes(app: App, { reads, uses, bits, answerOnce, now }: Parts): void {
  for (const schema of [...SHARPENING_SCHEMAS, EdgeSchema]) app.addSchema(schema);
  const common = { scope: "sharpenings:read", tag: "sharpenings" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/sharpenings",
      operationId: "listSharpenings",
      summary: "List sharpenings, with what bits measured before and after",
      page: SharpeningPageSchema,
      filters: { bitId: idFilter("Of this bit.") },
    },
    (afterId, most, { bitId }) => reads.page(afterId, most, { bitId }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/sharpenings/:sharpeningId",
      operationId: "getSharpening",
      summary: "Read a sharpening",
      record: SharpeningSchema,
      noun: "sharpening",
      parameter: "sharpeningId",
    },
    reads.find,
  );

  app.get(
    "/v1/bits/:bitId/edge",
    {
      config: { scope: "sharpenings:read", operation: "act" },
      schema: {
        operationId: "getBitEdge",
        tags: ["sharpenings"],
        summary: "Estimate what is left of a bit's edge",
        params: BitPath,
        response: { 200: ref(EdgeSchema) },
      },
    },
    async (request) => {
      const { bitId } = request.params;
      const bit = requireFound("bit", bitId, await bits.find(bitId));
      return edgeOf(
        bit,
        await uses.newest(MOST_USES, { bitId }),
        await reads.newest(MOST_SHARPENINGS, { bitId }),
      );
    },
  );

  app.post(
    "/v1/bits/:bitId/sharpenings",
    {
      config: { scope: "sharpenings:write", operation: "create" },
      schema: {
        operationId: "createSharpening",
        tags: ["sharpenings"],
        summary: "Enter a sharpening; the bit has its new dimensions from then on",
        params: BitPath,
        body: ref(NewSharpeningSchema),
        response: { 201: ref(SharpeningSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { bitId } = request.params;
        const bit = requireFound("bit", bitId, await bits.find(bitId));
        const stamp = stampOf(request, now());
        const { personId } = callerOf(request);
        const past = await uses.newest(MOST_USES, { bitId });
        const id = newId("sharpening");
        const { record, changes } = sharpenBit(id, bit, past, request.body, personId, stamp.at);
        const headers = { Location: `/v1/sharpenings/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes, headers, body: record };
      }),
  );
}
