import { defineKind } from "../store/kind.ts";
import {
  ApprovalRecordSchema,
  GroundsRecordSchema,
  LapseRecordSchema,
  ShownApprovalSchema,
  ShownGroundsSchema,
} from "./record-schema.ts";

export const approvalKind = defineKind({
  type: "approval",
  noun: "approval",
  idPrefix: "approval",
  path: "/v1/approvals",
  tag: { name: "approvals", description: "Approved settings: issued, lapsing by themselves, signed." },
  schema: ApprovalRecordSchema,
  shown: ShownApprovalSchema,
  table: "approvals",
  /** Its place in the status list. */
  queryColumns: { statusIndex: "assigned-number" },
});

export const lapseKind = defineKind({
  type: "lapse",
  noun: "lapse",
  idPrefix: "lapse",
  schema: LapseRecordSchema,
  table: "lapses",
});

export const groundsKind = defineKind({
  type: "grounds",
  noun: "approval's grounds",
  idPrefix: "grounds",
  schema: GroundsRecordSchema,
  shown: ShownGroundsSchema,
  table: "approval_grounds",
});
