import { integer, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { jsonColumn } from "../columns.ts";
import { kept } from "./kept.ts";

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
  why: text("why"),
  /** The latest `at` so far: a time finds its place in the order by it. */
  latestAt: text("latest_at").notNull(),
});

export const checkpoints = sqliteTable("checkpoints", {
  ...kept,
  sequence: integer("sequence").notNull(),
  hash: text("hash").notNull(),
  cause: text("cause").notNull(),
  signingKeyId: text("signing_key_id").notNull(),
  statement: text("statement").notNull(),
});

export const imports = sqliteTable("imports", {
  ...kept,
  sha256: text("sha256").notNull(),
  format: text("format").notNull(),
  mode: text("mode").notNull(),
  state: text("state").notNull(),
  rows: integer("rows").notNull(),
  created: integer("created").notNull(),
  changed: integer("changed").notNull(),
  unchanged: integer("unchanged").notNull(),
  refused: integer("refused").notNull(),
  newIds: integer("new_ids").notNull(),
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
