import type { Database as Sqlite } from "better-sqlite3";
import { SQLiteSyncDialect } from "drizzle-orm/sqlite-core";
import { onTestFinished } from "vitest";
import { SHAPE } from "../src/rooms/shape.ts";
import type { Query } from "../src/store/query.ts";
import { IN_MEMORY, openConnection } from "../src/store/sqlite/connection.ts";
import { SQLITE_DIALECT } from "../src/store/sqlite/dialect.ts";
import { migrate } from "../src/store/sqlite/migrate.ts";
import { MIGRATIONS_FOLDER, storeOn } from "../src/store/sqlite/open.ts";
import type { Store } from "../src/store/store.ts";

/** A new shop's store in memory for one test, with the connection behind it to tamper with. */
export function openInMemoryStore(): { readonly store: Store; readonly sqlite: Sqlite } {
  const sqlite = openConnection(IN_MEMORY);
  migrate(sqlite, MIGRATIONS_FOLDER, new Date());
  const store = storeOn(sqlite, SHAPE, new Date().toISOString());
  onTestFinished(store.close);
  return { store, sqlite };
}

/** How SQLite would go about a query: the steps of its plan. */
export function planOf(sqlite: Sqlite, query: Query<unknown>): string[] {
  const { sql } = new SQLiteSyncDialect().sqlToQuery(query.build(SQLITE_DIALECT).getSQL());
  return sqlite
    .prepare<[], { detail: string }>(`EXPLAIN QUERY PLAN ${sql.replaceAll("?", "1")}`)
    .all()
    .map(({ detail }) => detail);
}
