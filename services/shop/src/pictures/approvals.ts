import { makePlan } from "@rimwise/domain";
import { svg } from "@rimwise/drawing";
import type { FastifyRequest } from "fastify";
import { visibleTo } from "../access/caller.ts";
import { endingWithCourse } from "../approvals/ending-with-course.ts";
import { approvalKind } from "../approvals/kind.ts";
import { approvals } from "../approvals/reads.ts";
import type { ApprovalRecord } from "../approvals/record-schema.ts";
import { settingOf } from "../approvals/result.ts";
import { stateAt } from "../approvals/state.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { Problem } from "../problems/problem.ts";
import type { Signer } from "../signing/signer.ts";
import { canonicalText } from "../store/canonical.ts";
import type { Question } from "../store/query.ts";
import { pictureRoute } from "./picture-route.ts";
import { PLAN_PICTURES, type Planned, planScene } from "./plans.ts";
import { withStatement } from "./statement.ts";

export function approvalPictureRoutes(app: App, doors: Doors, signer: Signer): void {
  pictureRoute(
    app,
    doors,
    {
      scope: "approvals:read",
      tag: "approvals",
      path: "/v1/approvals/:approvalId/picture",
      operationId: "getApprovalPicture",
      summary: "An approved setting at the machine, as long as it is in force",
      description:
        "It names the setting it shows. As SVG it holds a signed statement (a compact JWS in `metadata`): of which setting and result it is, until when, and the SHA-256 of the picture without the statement.",
      kinds: PLAN_PICTURES,
    },
    async ({ params: { approvalId }, query: { kind, units, format }, request, at }) => {
      const { approval, planned } = await doors.answer(approvedAt(request, approvalId, at));
      const scene = planScene(planned[0], kind, `${approval.name} (${approval.id})`, units);
      // A PNG has no place for the statement.
      if (format === "png") return scene;
      return { svg: await withStatement(svg(scene), { approval, kind, units }, signer.sign) };
    },
  );
}

/** An approval with the plans it was made from. */
export type ApprovedAt = {
  readonly approval: ApprovalRecord;
  readonly planned: readonly [Planned, ...Planned[]];
};

/**
 * An approval that is in force, as the caller may see it, and what it was made from, one plan a wood. Throws a problem for one that is not,
 * and for one that this version would compute otherwise.
 */
export function* approvedAt(request: FastifyRequest, approvalId: string, at: string): Question<ApprovedAt> {
  const seen = yield* visibleTo(request, approvals).find(approvalId);
  const approval = yield* endingWithCourse(requireFound(approvalKind, approvalId, seen));
  const state = stateAt(approval, at);
  if (state !== "issued")
    throw new Problem("invalid-state", `Approval ${approval.id} is ${state}: nobody cuts by it.`);
  const kept = requireFound(approvalKind, approval.id, yield* approvals.groundsOf(approval.id));
  const [first, ...others] = kept.results.map(({ input }) => ({ input, plan: makePlan(input) }));
  if (first === undefined) throw new Error(`setting ${approval.id} was made from nothing`);
  const planned: [Planned, ...Planned[]] = [first, ...others];
  if (canonicalText(settingOf(planned)) === canonicalText(approval.setting)) return { approval, planned };
  throw new Problem("result-changed", "The plan would be different now. Issue it again.");
}
