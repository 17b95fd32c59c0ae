import Type from "typebox";
import { reasonBody } from "../bits/standing-schema.ts";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { happenedAt } from "../http/moment.ts";
import { requireOne } from "../http/named-records.ts";
import { idFilter, listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { changedMeanwhile, decidedAnew, stampOf, type Write } from "../http/write.ts";
import { callerOf, ownOrStaffs, ownPersonOnly } from "../keys/caller.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { creation, nextVersion, replacement } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import {
  type NewQualification,
  NewQualificationSchema,
  QUALIFICATION_SCHEMAS,
  QualificationPageSchema,
  type QualificationRecord,
  QualificationSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"qualification">;
  readonly people: RecordReads<"person">;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const QualificationPath = Type.Object({
  qualificationId: Type.String({ description: "Id of a qualification." }),
});

export function qualificationRoutes(app: App, { reads, people, write, answerOnce, now }: Parts): void {
  for (const schema of QUALIFICATION_SCHEMAS) app.addSchema(schema);
  const common = { scope: "qualifications:read", tag: "qualifications" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/qualifications",
      operationId: "listQualifications",
      summary: "List what people are qualified for; a member sees their own",
      page: QualificationPageSchema,
      filters: { personId: idFilter("Of this person.") },
    },
    async (afterId, most, { personId }, request) =>
      reads.page(afterId, most, { personId: ownPersonOnly(request) ?? personId }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/qualifications/:qualificationId",
      operationId: "getQualification",
      summary: "Read a qualification",
      record: QualificationSchema,
      noun: "qualification",
      parameter: "qualificationId",
    },
    async (id, request) => ownOrStaffs(request, await reads.find(id)),
  );

  app.post(
    "/v1/qualifications",
    {
      config: { scope: "qualifications:write", operation: "create" },
      schema: {
        operationId: "createQualification",
        tags: ["qualifications"],
        summary: "Sign what somebody was tested on, showed or was allowed",
        body: ref(NewQualificationSchema),
        response: { 201: ref(QualificationSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { body } = request;
        requireWhole(body);
        const { personId: signedBy } = callerOf(request);
        if (signedBy === undefined) {
          throw new Problem("person-needed", "A person signs a qualification, not a program.");
        }
        if (signedBy === body.personId) throw new Problem("not-yours", "Nobody signs for themselves.");
        await requireOne("/personId", "person", body.personId, people);
        const stamp = stampOf(request, now());
        const { givenAt, expiresAt, ...rest } = body;
        const record: QualificationRecord = {
          id: newId("qualification"),
          ...rest,
          givenAt: happenedAt(givenAt, stamp.at, "/givenAt"),
          ...(expiresAt !== undefined && { expiresAt: new Date(expiresAt).toISOString() }),
          signedBy,
          createdAt: stamp.at,
          updatedAt: stamp.at,
          version: 1,
        };
        const headers = { Location: `/v1/qualifications/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [creation("qualification", record)], headers, body: record };
      }),
  );

  app.post(
    "/v1/qualifications/:qualificationId/withdraw",
    {
      config: { scope: "qualifications:write", operation: "act" },
      schema: {
        operationId: "withdrawQualification",
        tags: ["qualifications"],
        summary: "Say that a qualification no longer counts",
        params: QualificationPath,
        body: reasonBody,
        response: { 200: ref(QualificationSchema) },
      },
    },
    (request, reply) =>
      decidedAnew(async () => {
        const { qualificationId } = request.params;
        const current = requireFound("qualification", qualificationId, await reads.find(qualificationId));
        const stamp = stampOf(request, now());
        const withdrawn = { at: stamp.at, because: request.body.because };
        const record: QualificationRecord = { ...nextVersion(current, stamp.at), withdrawn };
        await write(
          { stamp, changes: [replacement("qualification", current, record, "withdrawn")] },
          changedMeanwhile,
        );
        reply.header("ETag", etagOf(record.version));
        return record;
      }),
  );
}

/** A safety test has a score, and nothing else has. */
function requireWhole({ kind, scorePercent }: NewQualification): void {
  if ((kind === "safety-test") === (scorePercent !== undefined)) return;
  const isTest = kind === "safety-test";
  throw notValid([
    {
      in: "body",
      pointer: "/scorePercent",
      message: isTest ? "A safety test has a score." : "Only a safety test has a score.",
      accepted: isTest ? "a number from 0 to 100" : "nothing: leave it out",
    },
  ]);
}
