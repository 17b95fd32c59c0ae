import { type ApprovedPrinted, approvedCard, approvedSheet, type PlanNamed } from "@rimwise/drawing";
import type { ApprovalRecord } from "../approvals/record-schema.ts";
import { bits } from "../bits/reads.ts";
import { courses } from "../courses/kind.ts";
import type { App } from "../http/app-type.ts";
import type { Doors } from "../http/routes.ts";
import { dayIn, type ShopPlace } from "../http/shop-place.ts";
import { people } from "../people/kind.ts";
import { type ApprovedAt, approvedAt } from "../pictures/approvals.ts";
import { routers } from "../routers/kind.ts";
import type { Question } from "../store/query.ts";
import { codeOf } from "./code.ts";
import { printRoute } from "./print-route.ts";

export function approvalPrintRoutes(app: App, doors: Doors, place: ShopPlace): void {
  printRoute(
    app,
    doors,
    {
      scope: "approvals:read",
      tag: "approvals",
      path: "/v1/approvals/:approvalId/printout",
      operationId: "getApprovalPrintout",
      summary: "An approved setting on paper, with a code that checks it, as long as it is in force",
      usualPaper: "a5",
    },
    ({ params: { approvalId }, query: { units, paper }, request, at }) =>
      doors.answer(
        (function* () {
          const approved = yield* approvedOf(yield* approvedAt(request, approvalId, at), place);
          return {
            pages: () => approvedSheet({ ...approved, units, paper }),
            card: () => approvedCard({ ...approved, units }),
          };
        })(),
      ),
  );
}

/** How closely somebody must watch, as a person is told. */
const WATCHED: Readonly<Record<ApprovalRecord["supervision"], string>> = {
  beside: "somebody stands beside you",
  "in-the-room": "somebody is in the room",
  "on-call": "somebody can be called",
};

type Approved = Omit<ApprovedPrinted, "units" | "paper">;

function* approvedOf({ approval, planned }: ApprovedAt, place: ShopPlace): Question<Approved> {
  const course = yield* courses.find(approval.courseId);
  const bitName = (yield* bits.find(approval.bitId))?.name;
  const routerName = (yield* routers.find(approval.routerId))?.name;
  const issuer = approval.issuedBy === undefined ? undefined : yield* people.find(approval.issuedBy);
  const named = (each: (typeof planned)[number]): PlanNamed => ({
    ...each,
    ...(bitName !== undefined && { bitName }),
    ...(routerName !== undefined && { routerName }),
  });
  const [first, ...others] = planned;
  return {
    name: approval.name,
    approvalId: approval.id,
    issued: {
      course: course?.name ?? approval.courseId,
      by: issuer?.name,
      untilDay: dayIn(place.timeZone, approval.validUntil),
      supervision: WATCHED[approval.supervision],
    },
    code: codeOf(`${place.publicUrl}/settings/${approval.id}`),
    plans: [named(first), ...others.map(named)],
  };
}
