import type { FastifyBaseLogger, FastifyRequest } from "fastify";
import type { App } from "../http/app-type.ts";
import { idFilter, listRoute } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf, type Write } from "../http/write.ts";
import { ownPersonOnly } from "../keys/caller.ts";
import { Problem } from "../problems/problem.ts";
import { creation } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { type CheckSources, checkFacts } from "./facts.ts";
import { type Judgement, judgeCheck } from "./judge.ts";
import {
  CHECK_SCHEMAS,
  type CheckAnswer,
  CheckAnswerSchema,
  CheckPageSchema,
  type CheckRecord,
  type CheckRequest,
  CheckRequestSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"check">;
  readonly sources: CheckSources;
  readonly write: Write;
  readonly now: () => Date;
};

export function checkRoutes(app: App, { reads, sources, write, now }: Parts): void {
  for (const schema of CHECK_SCHEMAS) app.addSchema(schema);

  app.post(
    "/v1/checks",
    {
      config: { scope: "checks:ask", operation: "act" },
      schema: {
        operationId: "askCheck",
        tags: ["checks"],
        summary: "May this person run this bit on this router at this mark, now?",
        description: "Only `isAllowed: true` is a yes; any other answer, and none at all, is a no.",
        body: ref(CheckRequestSchema),
        response: { 200: ref(CheckAnswerSchema) },
      },
    },
    async (request) => {
      requireOwn(request, request.body.personId);
      const stamp = stampOf(request, now());
      const judgement = await judged(request.body, request.log, stamp.at);
      const record =
        request.body.isRecorded === true ? recordOf(request.body, judgement, stamp.at) : undefined;
      if (record !== undefined) await write({ stamp, changes: [creation("check", record)] });
      return answerOf(judgement, stamp.at, record?.id ?? null);
    },
  );

  listRoute(
    app,
    {
      scope: "checks:read",
      tag: "checks",
      path: "/v1/checks",
      operationId: "listChecks",
      summary: "List kept checks; a member sees their own",
      page: CheckPageSchema,
      filters: {
        personId: idFilter("About this person."),
        bitId: idFilter("About this bit."),
      },
    },
    async (afterId, most, { personId, bitId }, request) =>
      reads.page(afterId, most, { personId: ownPersonOnly(request) ?? personId, bitId }),
  );

  /** What cannot be read cannot be relied on: then it is a no, with that as its reason. */
  async function judged(asked: CheckRequest, log: FastifyBaseLogger, at: string): Promise<Judgement> {
    try {
      return judgeCheck(asked, await checkFacts(asked, sources), at);
    } catch (error) {
      log.error({ err: error }, "a check could not be judged");
      const text = "The records cannot be read just now.";
      return { reasons: [{ code: "records-unavailable", text }], approval: undefined };
    }
  }
}

function requireOwn(request: FastifyRequest, personId: string): void {
  const own = ownPersonOnly(request);
  if (own === undefined || own === personId) return;
  throw new Problem("not-yours", "A member asks about themselves only.");
}

function recordOf(
  { personId, bitId, routerId, dialMark, woodId, mounting }: CheckRequest,
  { reasons, approval }: Judgement,
  at: string,
): CheckRecord {
  return {
    id: newId("check"),
    personId,
    bitId,
    routerId,
    asked: {
      ...(dialMark !== undefined && { dialMark }),
      ...(woodId !== undefined && { woodId }),
      ...(mounting !== undefined && { mounting }),
    },
    isAllowed: reasons.length === 0,
    reasons,
    ...(approval !== undefined && { approvalId: approval.id }),
    createdAt: at,
    updatedAt: at,
    version: 1,
  };
}

function answerOf({ reasons, approval }: Judgement, at: string, checkId: string | null): CheckAnswer {
  const isAllowed = reasons.length === 0 && approval !== undefined;
  return {
    isAllowed,
    reasons: reasons.map(({ code, text }) => ({ code, text })),
    approvalId: approval?.id ?? null,
    supervision: isAllowed ? approval.supervision : null,
    validUntil: isAllowed ? approval.validUntil : null,
    at,
    checkId,
  };
}
