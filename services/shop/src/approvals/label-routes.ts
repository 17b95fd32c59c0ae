import { mountingTitle } from "@rimwise/domain";
import Type from "typebox";
import { visibleTo } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { idList } from "../http/identity-filters.ts";
import { namedInQuery } from "../http/named-records.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { dayIn, type ShopPlace } from "../http/shop-place.ts";
import type { CodedLabel } from "../labels/label.ts";
import { labelRoute } from "../labels/label-route.ts";
import { labelSheetRoute } from "../labels/sheet-route.ts";
import { routers } from "../routers/kind.ts";
import type { Question } from "../store/query.ts";
import { approvalKind } from "./kind.ts";
import { approvals } from "./reads.ts";
import type { ApprovalRecord } from "./record-schema.ts";

/** What a bit is cleared for, as a label says it beside how the router is held. */
const CLEARED: Readonly<Record<string, string>> = {
  "table-only": "table only",
  handheld: "also handheld",
  "handheld-with-care": "handheld with care",
};

export function approvalLabelRoutes(app: App, doors: Doors, place: ShopPlace): void {
  labelRoute(
    app,
    doors,
    {
      scope: "approvals:read",
      tag: "approvals",
      path: "/v1/approvals/:approvalId/label",
      operationId: "getApprovalLabel",
      summary: "A label to print for a setting, with a QR code that leads to its page and its check",
    },
    function* ({ params: { approvalId }, request }) {
      const found = yield* visibleTo(request, approvals).find(approvalId);
      return yield* approvalLabel(requireFound(approvalKind, approvalId, found), place);
    },
  );

  labelSheetRoute(
    app,
    doors,
    {
      scope: "approvals:read",
      tag: "approvals",
      path: "/v1/approvals/labels",
      operationId: "getApprovalLabels",
      summary: "Pages to print with the labels of some settings",
      query: Type.Object({ ids: idList }),
    },
    function* ({ query: { ids }, request }) {
      const labels: CodedLabel[] = [];
      const view = { kind: approvalKind, find: visibleTo(request, approvals).find };
      for (const approval of yield* namedInQuery(ids, view))
        labels.push(yield* approvalLabel(approval, place));
      return { title: "Settings", labels };
    },
  );
}

function* approvalLabel(approval: ApprovalRecord, { publicUrl, timeZone }: ShopPlace): Question<CodedLabel> {
  const bit = yield* bits.find(approval.bitId);
  const router = yield* routers.find(approval.routerId);
  return {
    url: `${publicUrl}/settings/${approval.id}`,
    title: approval.name,
    lines: [
      bit?.name ?? approval.bitId,
      router?.name ?? approval.routerId,
      mountingOf(approval),
      speedOf(approval),
      `until ${dayIn(timeZone, approval.validUntil)}`,
      "check first: scan",
    ],
  };
}

function mountingOf({ mounting, setting: { clearance } }: ApprovalRecord): string {
  const cleared = CLEARED[clearance] ?? clearance;
  return `${mountingTitle(mounting)} (${cleared})`;
}

function speedOf({ setting: { mark, rpm } }: ApprovalRecord): string {
  const speed = rpm === null ? "its one speed" : `${rpm.toLocaleString("en-GB")} rpm`;
  return mark === null ? speed : `mark ${mark}, ${speed}`;
}
