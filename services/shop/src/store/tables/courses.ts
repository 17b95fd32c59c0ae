import { integer, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { jsonColumn } from "../columns.ts";
import { kept } from "./kept.ts";

export const shopPolicies = sqliteTable("shop_policies", { ...kept, layer: jsonColumn("layer").notNull() });

export const courses = sqliteTable("courses", {
  ...kept,
  name: text("name").notNull(),
  notes: text("notes"),
  policy: jsonColumn("policy").notNull(),
  requirements: jsonColumn("requirements").notNull(),
  isTwoPerson: integer("is_two_person", { mode: "boolean" }).notNull(),
  endsAt: text("ends_at"),
});

export const enrolments = sqliteTable("enrolments", {
  ...kept,
  courseId: text("course_id").notNull(),
  personId: text("person_id").notNull(),
  part: text("part").notNull(),
  endedAt: text("ended_at"),
});

export const qualifications = sqliteTable("qualifications", {
  ...kept,
  personId: text("person_id").notNull(),
  kind: text("kind").notNull(),
  skill: text("skill"),
  scorePercent: real("score_percent"),
  givenAt: text("given_at").notNull(),
  expiresAt: text("expires_at"),
  signedBy: text("signed_by").notNull(),
  notes: text("notes"),
  withdrawn: jsonColumn("withdrawn"),
});

export const approvals = sqliteTable("approvals", {
  ...kept,
  name: text("name").notNull(),
  courseId: text("course_id").notNull(),
  planId: text("plan_id").notNull(),
  bitId: text("bit_id").notNull(),
  routerId: text("router_id").notNull(),
  mounting: text("mounting").notNull(),
  woodIds: jsonColumn("wood_ids").notNull(),
  personIds: jsonColumn("person_ids"),
  skill: text("skill"),
  supervision: text("supervision").notNull(),
  validFrom: text("valid_from").notNull(),
  validUntil: text("valid_until").notNull(),
  state: text("state").notNull(),
  setting: jsonColumn("setting").notNull(),
  resultDigest: text("result_digest").notNull(),
  inputDigest: text("input_digest").notNull(),
  engineVersion: text("engine_version").notNull(),
  draftedBy: text("drafted_by").notNull(),
  issuedAt: text("issued_at"),
  issuedBy: text("issued_by"),
  lapseId: text("lapse_id"),
  withdrawal: jsonColumn("withdrawal"),
  replacedById: text("replaced_by_id"),
  replacesId: text("replaces_id"),
});

export const lapses = sqliteTable("lapses", {
  ...kept,
  because: text("because").notNull(),
  cause: jsonColumn("cause").notNull(),
  before: jsonColumn("before").notNull(),
  after: jsonColumn("after"),
});

export const approvalGrounds = sqliteTable("approval_grounds", {
  ...kept,
  approvalId: text("approval_id").notNull(),
  request: jsonColumn("request").notNull(),
  results: jsonColumn("results").notNull(),
});

export const checks = sqliteTable("checks", {
  ...kept,
  personId: text("person_id").notNull(),
  bitId: text("bit_id").notNull(),
  routerId: text("router_id").notNull(),
  asked: jsonColumn("asked").notNull(),
  isAllowed: integer("is_allowed", { mode: "boolean" }).notNull(),
  reasons: jsonColumn("reasons").notNull(),
  approvalId: text("approval_id"),
});
