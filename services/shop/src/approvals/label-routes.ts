import { visibleTo } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { labelRoute } from "../labels/label-route.ts";
import { routers } from "../routers/kind.ts";
import { approvalKind } from "./kind.ts";
import { approvals } from "./reads.ts";
import type { ApprovalRecord } from "./record-schema.ts";

/** Where labels lead, and whose days they name. */
export type LabelPlace = {
  readonly publicUrl: string;
  /** IANA name of the shop's time zone. */
  readonly timeZone: string;
};

/** What a bit is cleared for, as a label says it beside how the router is held. */
const CLEARED: Readonly<Record<string, string>> = {
  "table-only": "table only",
  handheld: "also handheld",
  "handheld-with-care": "handheld with care",
};

export function approvalLabelRoutes(app: App, doors: Doors, { publicUrl, timeZone }: LabelPlace): void {
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
      const approval = requireFound(approvalKind, approvalId, found);
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
    },
  );
}

function mountingOf({ mounting, setting: { clearance } }: ApprovalRecord): string {
  const cleared = CLEARED[clearance] ?? clearance;
  return `${mounting === "table" ? "in a table" : "handheld"} (${cleared})`;
}

function speedOf({ setting: { mark, rpm } }: ApprovalRecord): string {
  const speed = rpm === null ? "its one speed" : `${rpm.toLocaleString("en-GB")} rpm`;
  return mark === null ? speed : `mark ${mark}, ${speed}`;
}

/** The day that a moment falls on where the shop is, such as 26 Nov 2026. */
function dayIn(timeZone: string, moment: string): string {
  return new Date(moment).toLocaleDateString("en-GB", { timeZone, dateStyle: "medium" });
}
