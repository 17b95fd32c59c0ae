import { integer, text } from "drizzle-orm/sqlite-core";

/** The columns of every kept record. */
export const kept = {
  id: text("id").primaryKey(),
  version: integer("version").notNull(),
  createdAt: text("created_at").notNull(),
  updatedAt: text("updated_at").notNull(),
};
