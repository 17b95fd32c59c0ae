import { sqliteTable, text } from "drizzle-orm/sqlite-core";
import { jsonColumn } from "../columns.ts";
import { kept } from "./kept.ts";

export const people = sqliteTable("people", {
  ...kept,
  name: text("name").notNull(),
  role: text("role").notNull(),
  state: text("state").notNull(),
  notes: text("notes"),
});

export const keys = sqliteTable("keys", {
  ...kept,
  name: text("name").notNull(),
  role: text("role"),
  personId: text("person_id"),
  scopes: jsonColumn("scopes"),
  keySha256: text("key_sha256").notNull(),
  previousSha256: text("previous_sha256"),
  previousUntil: text("previous_until"),
  expiresAt: text("expires_at"),
  revokedAt: text("revoked_at"),
});
