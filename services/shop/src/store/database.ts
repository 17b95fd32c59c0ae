import type { BetterSQLite3Database } from "drizzle-orm/better-sqlite3";

/** The handle that `reads.ts` files prepare their queries on. */
export type Database = BetterSQLite3Database<Record<string, never>>;
