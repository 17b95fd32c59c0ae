import type { Dial, Form } from "@rimwise/domain";
import { integer, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { ROLES } from "../keys/scopes.ts";
import type { PlanAnswer } from "../plans/answer-schema.ts";
import type { PlanRequest } from "../plans/schema.ts";
import { jsonColumn } from "./json-column.ts";

// The tables as queries see them; `migrations/` makes them, and a test holds the two together.

const kept = {
  id: text("id").primaryKey(),
  version: integer("version").notNull(),
  createdAt: text("created_at").notNull(),
  updatedAt: text("updated_at").notNull(),
};

export const bits = sqliteTable("bits", {
  ...kept,
  name: text("name").notNull(),
  notes: text("notes"),
  form: jsonColumn<Form>("form").notNull(),
  shankDiameterMm: real("shank_diameter_mm").notNull(),
  wings: integer("wings").notNull(),
  massG: real("mass_g"),
  runOutMm: real("run_out_mm"),
  stickOutMm: real("stick_out_mm"),
  markedMaxRpm: real("marked_max_rpm"),
});

export const routers = sqliteTable("routers", {
  ...kept,
  name: text("name").notNull(),
  notes: text("notes"),
  minRpm: real("min_rpm").notNull(),
  maxRpm: real("max_rpm").notNull(),
  dial: jsonColumn<Dial>("dial"),
  inputPowerW: real("input_power_w"),
  colletDiametersMm: jsonColumn<number[]>("collet_diameters_mm"),
});

export const keys = sqliteTable("keys", {
  ...kept,
  name: text("name").notNull(),
  role: text("role", { enum: ROLES }).notNull(),
  keySha256: text("key_sha256").notNull(),
  revokedAt: text("revoked_at"),
});

export const plans = sqliteTable("plans", {
  ...kept,
  name: text("name"),
  request: jsonColumn<PlanRequest>("request").notNull(),
  plan: jsonColumn<PlanAnswer>("plan").notNull(),
});

export const events = sqliteTable("events", {
  sequence: integer("sequence").primaryKey(),
  at: text("at").notNull(),
  by: text("by").notNull(),
  requestId: text("request_id").notNull(),
  type: text("type").notNull(),
  subjectId: text("subject_id").notNull(),
  subjectVersion: integer("subject_version").notNull(),
  data: jsonColumn<Record<string, unknown>>("data").notNull(),
  previousHash: text("previous_hash").notNull(),
  hash: text("hash").notNull(),
});

export const answers = sqliteTable("answers", {
  scope: text("scope").notNull(),
  idempotencyKey: text("idempotency_key").notNull(),
  fingerprint: text("fingerprint").notNull(),
  status: integer("status").notNull(),
  headers: jsonColumn<Record<string, string>>("headers").notNull(),
  body: text("body").notNull(),
  expiresAt: text("expires_at").notNull(),
});

/** The table of each kind of record: one line each. */
export const RECORD_TABLES = { bit: bits, router: routers, key: keys, plan: plans };
