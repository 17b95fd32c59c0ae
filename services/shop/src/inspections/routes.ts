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
import { inspectBit } from "./decide.ts";
import { INSPECTION_SCHEMAS, InspectionPageSchema, InspectionSchema, NewInspectionSchema } from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"inspection">;
  readonly uses: RecordReads<"use">;
  readonly bits: BitReads;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

/** Uses that an inspection which is entered late may not have seen. */
const MOST_USES = 5000;

export function inspectionRoutes(app: App, { reads, uses, bits, answerOnce, now }: Parts): void {
  for (const schema of INSPECTION_SCHEMAS) app.addSchema(schema);
  const common = { scope: "inspections:read", tag: "inspections" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/inspections",
      operationId: "listInspections",
      summary: "List what was found on bits",
      page: InspectionPageSchema,
      filters: { bitId: idFilter("Of this bit.") },
    },
    (afterId, most, { bitId }) => reads.page(afterId, most, { bitId }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/inspections/:inspectionId",
      operationId: "getInspection",
      summary: "Read an inspection",
      record: InspectionSchema,
      noun: "inspection",
      parameter: "inspectionId",
    },
    reads.find,
  );

  app.post(
    "/v1/bits/:bitId/inspections",
    {
      config: { scope: "inspections:write", operation: "create" },
      schema: {
        operationId: "createInspection",
        tags: ["inspections"],
        summary: "Enter an inspection; it may hold the bit or end it",
        params: BitPath,
        body: ref(NewInspectionSchema),
        response: { 201: ref(InspectionSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { bitId } = request.params;
        const bit = requireFound("bit", bitId, await bits.find(bitId));
        const stamp = stampOf(request, now());
        const { personId } = callerOf(request);
        const past = await uses.newest(MOST_USES, { bitId });
        const id = newId("inspection");
        const { record, changes } = inspectBit(id, bit, past, request.body, personId, stamp.at);
        const headers = { Location: `/v1/inspections/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes, headers, body: record };
      }),
  );
}
