import type { FastifyRequest } from "fastify";
import { visibleTo } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import { courses } from "../courses/kind.ts";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import { requireFound } from "../http/read-routes.ts";
import { ref } from "../http/reference.ts";
import { askedOf, type Doors, schemaOf } from "../http/routes.ts";
import { Problem } from "../problems/problem.ts";
import { routers } from "../routers/kind.ts";
import type { Signer } from "../signing/signer.ts";
import type { Question } from "../store/query.ts";
import { differencesBetween } from "./difference.ts";
import { differenceInWords } from "./difference-words.ts";
import { groundsAt } from "./grounds.ts";
import { approvalKind } from "./kind.ts";
import { approvals } from "./reads.ts";
import type { ApprovalRecord, GroundsRecord } from "./record-schema.ts";
import { resultOn, resultsOf, settingOf } from "./result.ts";
import { DifferenceSchema, GroundsSchema } from "./schema.ts";
import {
  SHEET_TYPE,
  SignedSheetSchema,
  SignedStatusSchema,
  STATUS_TYPE,
  sheetPayload,
  statusPayload,
} from "./sheet.ts";
import { stateAt } from "./state.ts";

/** Approvals ended early and not yet past their time, at most: a class's worth, many times over. */
const MOST_ENDED = 100_000;

/** How long one signature of the status list serves when nothing was added. */
const SIGNED_FOR_MS = 60_000;

const READ = { scope: "approvals:read", tag: "approvals" } as const;

export function sheetRoutes(app: App, doors: Doors, signer: Signer): void {
  app.addSchema(SignedSheetSchema);
  app.addSchema(SignedStatusSchema);

  const sheet = {
    ...READ,
    path: "/v1/approvals/:approvalId/sheet",
    operationId: "getApprovalSheet",
    summary: "The signed sheet of a setting in force, to take to the machine and to check anywhere",
  } as const;
  app.get(
    sheet.path,
    {
      config: { scope: sheet.scope, operation: "act" },
      schema: schemaOf(sheet, { response: { 200: ref(SignedSheetSchema) } }),
    },
    async (request) => {
      const at = doors.now().toISOString();
      const { params } = askedOf<typeof sheet.path, undefined, undefined>(request, at);
      const { approval, payload } = await doors.answer(stated(request, params.approvalId, at));
      const jws = await signer.sign(payload, SHEET_TYPE);
      return { approvalId: approval.id, jws, validUntil: approval.validUntil };
    },
  );

  statusRoute(app, doors, signer);

  askRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/approvals/:approvalId/grounds",
      operationId: "getApprovalGrounds",
      summary: "The full copy of what a setting was made from, and of the result",
      answer: GroundsSchema,
    },
    function* ({ params: { approvalId }, request }) {
      const { id, inputDigest, engineVersion } = yield* seen(request, approvalId);
      const { request: asked, results } = yield* keptGrounds(id);
      return { approvalId: id, request: asked, results, digest: inputDigest, engineVersion };
    },
  );

  askRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/approvals/:approvalId/difference",
      operationId: "getApprovalDifference",
      summary: "A setting as it is and as it would be computed now",
      answer: DifferenceSchema,
    },
    function* ({ params: { approvalId }, request, at }) {
      const approval = yield* seen(request, approvalId);
      const grounds = yield* keptGrounds(approval.id);
      const { id, woodIds, courseId, setting } = approval;
      const result = resultOn(yield* groundsAt(at)(grounds.request, woodIds, courseId));
      if (result.kind === "may-not-run") {
        const { because } = result;
        const nothing = { isSame: false, after: null, inWords: [], differing: [], resultDigest: null };
        return { approvalId: id, before: setting, because, ...nothing };
      }
      const { resultDigest, planned } = result;
      return {
        approvalId: id,
        isSame: resultDigest === approval.resultDigest,
        before: setting,
        after: settingOf(planned),
        inWords: inWords(grounds, resultsOf(planned)),
        differing: differing(grounds, resultsOf(planned)),
        because: null,
        resultDigest,
      };
    },
  );
}

/** The list of sheets that must no longer be believed: signed again when it changed, or when a minute has passed. */
function statusRoute(app: App, { answer, now }: Doors, signer: Signer): void {
  let signed: { readonly ids: string; readonly atMs: number; readonly jws: string } | undefined;
  app.get(
    "/v1/approvals/status",
    {
      config: { scope: "public", operation: "act" },
      schema: {
        operationId: "getApprovalStatus",
        tags: ["approvals"],
        summary: "The signed list of settings whose sheets must no longer be believed",
        response: { 200: ref(SignedStatusSchema) },
      },
    },
    async () => {
      const at = now();
      const ended = await answer(approvals.endedEarly(at.toISOString(), MOST_ENDED));
      const ids = ended.join();
      const isFresh =
        signed !== undefined && signed.ids === ids && Math.abs(at.getTime() - signed.atMs) < SIGNED_FOR_MS;
      if (signed === undefined || !isFresh) {
        const jws = await signer.sign(statusPayload(ended, at.toISOString()), STATUS_TYPE);
        signed = { ids, atMs: at.getTime(), jws };
      }
      return { jws: signed.jws };
    },
  );
}

/** What the sheet of an approval in force states. */
function* stated(request: FastifyRequest, approvalId: string, at: string) {
  const kept = yield* seen(request, approvalId);
  const course = yield* courses.find(kept.courseId);
  const [validUntil = kept.validUntil] = [kept.validUntil, course?.endsAt ?? kept.validUntil].sort();
  const approval = { ...kept, validUntil };
  const state = stateAt(approval, at);
  if (state !== "issued") {
    throw new Problem(
      "invalid-state",
      `Approval ${approval.id} is ${state}. Only what is issued has a sheet.`,
    );
  }
  const bit = requireFound(bits.kind, approval.bitId, yield* bits.find(approval.bitId));
  const router = requireFound(routers.kind, approval.routerId, yield* routers.find(approval.routerId));
  return { approval, payload: sheetPayload(approval, yield* keptGrounds(approval.id), bit, router) };
}

function* seen(request: FastifyRequest, id: string): Question<ApprovalRecord> {
  return requireFound(approvalKind, id, yield* visibleTo(request, approvals).find(id));
}

function* keptGrounds(id: string): Question<GroundsRecord> {
  return requireFound(approvalKind, id, yield* approvals.groundsOf(id));
}

function inWords({ results }: GroundsRecord, now: GroundsRecord["results"]): string[] {
  const sentences = results.flatMap(({ plan }, index) => {
    const after = now[index]?.plan;
    return after === undefined ? [] : differenceInWords(plan, after);
  });
  return [...new Set(sentences)];
}

function differing({ results }: GroundsRecord, now: GroundsRecord["results"]) {
  return results.flatMap(({ plan: { digest: _, ...before } }, index) => {
    const { digest: __, ...after } = now[index]?.plan ?? { digest: "" };
    return differencesBetween(before, after).map((each) => ({ woodId: before.wood.id, ...each }));
  });
}
