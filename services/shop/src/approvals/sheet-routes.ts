import type { FastifyRequest } from "fastify";
import Type from "typebox";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { LABEL_ANSWER, labelSvg, SVG_TYPE } from "../labels/label.ts";
import { Problem } from "../problems/problem.ts";
import type { Signer } from "../signing/signer.ts";
import { isForMember } from "./access.ts";
import type { GroundsRecord } from "./approval.ts";
import { differencesBetween } from "./difference.ts";
import { outcomeOn, resultsOf, settingOf } from "./outcome.ts";
import type { ApprovalParts } from "./routes.ts";
import { type Difference, DifferenceSchema, GroundsSchema } from "./schema.ts";
import {
  SHEET_TYPE,
  SignedSheetSchema,
  SignedStatusSchema,
  STATUS_TYPE,
  sheetPayload,
  statusPayload,
} from "./sheet.ts";
import { stateAt } from "./state.ts";

type Parts = Pick<ApprovalParts, "reads" | "bits" | "routers" | "access" | "now"> & {
  readonly signer: Signer;
  readonly publicUrl: string;
};

const ApprovalPath = Type.Object({ approvalId: Type.String({ description: "Id of a setting." }) });

/** Settings ended early and not yet past their time, at most: a class's worth, many times over. */
const MOST_ENDED = 100_000;

/** How long one signature of the status list serves, where nothing was added. */
const SIGNED_FOR_MS = 60_000;

export function sheetRoutes(app: App, { reads, bits, routers, access, signer, publicUrl, now }: Parts): void {
  app.addSchema(SignedSheetSchema);
  app.addSchema(SignedStatusSchema);
  let signed: { readonly ids: string; readonly atMs: number; readonly jws: string } | undefined;

  app.get(
    "/v1/approvals/:approvalId/sheet",
    {
      config: { scope: "approvals:read", operation: "act" },
      schema: {
        operationId: "getApprovalSheet",
        tags: ["approvals"],
        summary: "The signed sheet of a setting in force, to take to the machine and to check anywhere",
        params: ApprovalPath,
        response: { 200: ref(SignedSheetSchema) },
      },
    },
    async (request) => {
      const approval = await seen(request, request.params.approvalId);
      const state = stateAt(approval, now().toISOString());
      if (state !== "issued") {
        throw new Problem(
          "state-not-fitting",
          `Setting ${approval.id} is ${state}. Only what is issued has a sheet.`,
        );
      }
      const bit = requireFound("bit", approval.bitId, await bits.find(approval.bitId));
      const router = requireFound("router", approval.routerId, await routers.find(approval.routerId));
      const grounds = requireFound("setting", approval.id, await reads.groundsOf(approval.id));
      const jws = await signer.sign(sheetPayload(approval, grounds, bit, router), SHEET_TYPE);
      return { approvalId: approval.id, jws, validUntil: approval.validUntil };
    },
  );

  app.get(
    "/v1/approvals/:approvalId/label",
    {
      config: { scope: "approvals:read", operation: "act" },
      schema: {
        operationId: "getApprovalLabel",
        tags: ["approvals"],
        summary: "A label to print for a setting, with a QR code that leads to its page and its check",
        params: ApprovalPath,
        response: LABEL_ANSWER,
      },
    },
    async (request, reply) => {
      const { id, name, setting, validUntil } = await seen(request, request.params.approvalId);
      const lines = [
        `mark ${setting.dialMark ?? "–"}, ${setting.rpm ?? "–"} rpm`,
        `until ${validUntil.slice(0, 10)}`,
      ];
      return reply.type(SVG_TYPE).send(labelSvg({ url: `${publicUrl}/settings/${id}`, title: name, lines }));
    },
  );

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
      const ended = await reads.endedEarly(at.toISOString(), MOST_ENDED);
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

  app.get(
    "/v1/approvals/:approvalId/grounds",
    {
      config: { scope: "approvals:read", operation: "act" },
      schema: {
        operationId: "getApprovalGrounds",
        tags: ["approvals"],
        summary: "The full copy of what a setting was made from, and what came out",
        params: ApprovalPath,
        response: { 200: ref(GroundsSchema) },
      },
    },
    async (request) => {
      const { id, inputDigest, engineVersion } = await seen(request, request.params.approvalId);
      const grounds = requireFound("setting", id, await reads.groundsOf(id));
      return {
        approvalId: id,
        request: grounds.request,
        results: grounds.results.map(({ input, plan }) => ({ input, plan })),
        digest: inputDigest,
        engineVersion,
      };
    },
  );

  app.get(
    "/v1/approvals/:approvalId/difference",
    {
      config: { scope: "approvals:read", operation: "act" },
      schema: {
        operationId: "getApprovalDifference",
        tags: ["approvals"],
        summary: "A setting as it is and as it would come out now",
        params: ApprovalPath,
        response: { 200: ref(DifferenceSchema) },
      },
    },
    async (request): Promise<Difference> => {
      const approval = await seen(request, request.params.approvalId);
      const grounds = requireFound("setting", approval.id, await reads.groundsOf(approval.id));
      const { woodIds, courseId, setting } = approval;
      const outcome = outcomeOn(await reads.ground(now().toISOString(), grounds.request, woodIds, courseId));
      if (outcome.kind === "may-not-run") {
        const { because } = outcome;
        return {
          approvalId: approval.id,
          isSame: false,
          before: setting,
          after: null,
          differing: [],
          because,
          resultDigest: null,
        };
      }
      const { resultDigest, planned } = outcome;
      return {
        approvalId: approval.id,
        isSame: resultDigest === approval.resultDigest,
        before: setting,
        after: settingOf(planned),
        differing: differing(grounds, resultsOf(planned)),
        because: null,
        resultDigest,
      };
    },
  );

  async function seen(request: FastifyRequest, id: string) {
    const record = await reads.find(id);
    const isVisible =
      record !== undefined && (await access.maySee(request, record.courseId)) && isForMember(record, request);
    return requireFound("setting", id, isVisible ? record : undefined);
  }
}

function differing({ results }: GroundsRecord, now: GroundsRecord["results"]) {
  return results.flatMap(({ plan: { digest: _, ...before } }, index) => {
    const { digest: __, ...after } = now[index]?.plan ?? { digest: "" };
    return differencesBetween(before, after).map((each) => ({ woodId: before.wood.id, ...each }));
  });
}
