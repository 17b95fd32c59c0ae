import type { FastifyBaseLogger, FastifyRequest } from "fastify";
import { ownPersonOnly } from "../access/caller.ts";
import type { App } from "../http/app-type.ts";
import { withoutUndefined } from "../http/given.ts";
import { listRecordsRoute } from "../http/read-routes.ts";
import { ref } from "../http/reference.ts";
import type { Doors } from "../http/routes.ts";
import { stampOf } from "../http/write.ts";
import { Problem } from "../problems/problem.ts";
import { creation, newRecord } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import { checkFacts } from "./facts.ts";
import { type Judgement, judgeCheck } from "./judge.ts";
import { checkKind, checks } from "./kind.ts";
import {
  CHECK_SCHEMAS,
  type CheckAnswer,
  CheckAnswerSchema,
  CheckPageSchema,
  type CheckRecord,
  type CheckRequest,
  CheckRequestSchema,
} from "./schema.ts";

/** As long as a client tries again by itself: a yes of yesterday must not pass for one of now. */
const KEPT_FOR_MS = 2 * 60 * 1000;

export function checkRoutes(app: App, doors: Doors): void {
  for (const schema of CHECK_SCHEMAS) app.addSchema(schema);

  app.post(
    "/v1/checks",
    {
      config: { scope: "checks:ask", operation: "act" },
      schema: {
        operationId: "askCheck",
        tags: ["checks"],
        summary: "May this person run this bit on this router at this mark, now?",
        description:
          "Only `isAllowed: true` is a yes; any other answer, and none at all, is a no. One that is kept as a record takes an Idempotency-Key, whose answer is repeated for two minutes, with its own `at`; any other is judged again.",
        body: ref(CheckRequestSchema),
        response: { 200: ref(CheckAnswerSchema) },
      },
    },
    async (request, reply) => {
      requireOwn(request, request.body.personId);
      if (request.body.isRecorded !== true) {
        const at = doors.now().toISOString();
        return answerOf(await judged(request.body, request.log, at), at, null);
      }
      return doors.answerOnce(request, reply, async () => {
        const stamp = stampOf(request, doors.now());
        const judgement = await judged(request.body, request.log, stamp.at);
        const record = recordOf(request.body, judgement, stamp.at);
        const body = answerOf(judgement, stamp.at, record.id);
        return { stamp, changes: [creation(checkKind, record)], status: 200, body, keptForMs: KEPT_FOR_MS };
      });
    },
  );

  listRecordsRoute(app, doors, {
    of: checks,
    scope: "checks:read",
    tag: "checks",
    path: "/v1/checks",
    operationId: "listChecks",
    summary: "List kept checks; a member sees their own",
    page: CheckPageSchema,
    filters: { personId: "About this person.", bitId: "About this bit." },
  });

  /** What cannot be read cannot be relied on: then it is a no, with that as its reason. */
  async function judged(asked: CheckRequest, log: FastifyBaseLogger, at: string): Promise<Judgement> {
    try {
      return judgeCheck(asked, await doors.answer(checkFacts(asked, at)), at);
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
  { personId, bitId, routerId, mark, woodId, mounting }: CheckRequest,
  { reasons, approval }: Judgement,
  at: string,
): CheckRecord {
  const fields = {
    personId,
    bitId,
    routerId,
    asked: withoutUndefined({ mark, woodId, mounting }),
    isAllowed: reasons.length === 0,
    reasons: [...reasons],
    approvalId: approval?.id,
  };
  return newRecord(newId(checkKind.idPrefix), withoutUndefined(fields), at);
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
