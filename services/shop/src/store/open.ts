import { openSqliteStore } from "./sqlite/open.ts";
import type { Shape, Store } from "./store.ts";

/** Opens the database of a shop: a SQLite file, or `:memory:`, which keeps it no longer than the process. */
export async function openStore(database: string, shape: Shape, now?: () => Date): Promise<Store> {
  return openSqliteStore(database, shape, now);
}
