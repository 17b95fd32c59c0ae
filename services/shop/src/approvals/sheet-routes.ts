import type { FastifyRequest } from "fastify";
import { visibleTo } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
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
import { endingWithCourse } from "./ending-with-course.ts";
import { groundsAt } from "./grounds.ts";
import { approvalKind } from "./kind.ts";
import { approvals } from "./reads.ts";
import type { ApprovalRecord, GroundsRecord } from "./record-schema.ts";
import { resultOn, resultsOf, settingOf } from "./result.ts";
import { DifferenceSchema, GroundsSchema } from "./schema.ts";
import { SHEET_TYPE, sheetPayload } from "./sheet.ts";
import { ApprovedSheetSchema, SignedSheetSchema } from "./sheet-schema.ts";
import { stateAt } from "./state.ts";

const READ = { scope: "approvals:read", tag: "approvals" } as const;

/** `statusListUrl` is where the list is read that says which sheets must no longer be believed. */
export function sheetRoutes(app: App, doors: Doors, signer: Signer, statusListUrl: string): void {
  for (const schema of [ApprovedSheetSchema, SignedSheetSchema]) app.addSchema(schema);

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
      const { approval, payload } = await doors.answer(stated(request, params.approvalId, statusListUrl, at));
      const jws = await signer.sign(payload, SHEET_TYPE);
      return { approvalId: approval.id, jws, validUntil: approval.validUntil };
    },
  );

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
        const { reason } = result;
        const nothing = { isSame: false, after: null, inWords: [], differing: [], resultDigest: null };
        return { approvalId: id, before: setting, reason, ...nothing };
      }
      const { resultDigest, planned } = result;
      return {
        approvalId: id,
        isSame: resultDigest === approval.resultDigest,
        before: setting,
        after: settingOf(planned),
        inWords: inWords(grounds, resultsOf(planned)),
        differing: differing(grounds, resultsOf(planned)),
        reason: null,
        resultDigest,
      };
    },
  );
}

/** What the sheet of an approval in force states. */
function* stated(request: FastifyRequest, approvalId: string, statusListUrl: string, at: string) {
  const approval = yield* endingWithCourse(yield* seen(request, approvalId));
  const state = stateAt(approval, at);
  if (state !== "issued") {
    throw new Problem(
      "invalid-state",
      `Approval ${approval.id} is ${state}. Only what is issued has a sheet.`,
    );
  }
  const bit = requireFound(bits.kind, approval.bitId, yield* bits.find(approval.bitId));
  const router = requireFound(routers.kind, approval.routerId, yield* routers.find(approval.routerId));
  const index = requireFound(approvalKind, approval.id, yield* approvals.statusIndexOf(approval.id));
  const place = { index, url: statusListUrl };
  return { approval, payload: sheetPayload(approval, yield* keptGrounds(approval.id), bit, router, place) };
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
