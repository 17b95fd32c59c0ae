import { integer, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { jsonColumn } from "./columns.ts";

/** The chain of events. */
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
  recordDigest: text("record_digest"),
  /** The latest `at` so far: a time finds its place in the order by it. */
  latestAt: text("latest_at").notNull(),
});

/** The kept answers to requests that may come again. */
export const answers = sqliteTable("answers", {
  scope: text("scope").notNull(),
  idempotencyKey: text("idempotency_key").notNull(),
  fingerprint: text("fingerprint").notNull(),
  status: integer("status").notNull(),
  headers: jsonColumn<Record<string, string>>("headers").notNull(),
  body: text("body").notNull(),
  expiresAt: text("expires_at").notNull(),
});
