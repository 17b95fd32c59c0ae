import { isPostgresql, readAddress } from "./postgresql/address.ts";
import { openSqliteStore } from "./sqlite/open.ts";
import type { Shape, Store } from "./store.ts";

export { isPostgresql };

/** Opens the database of a shop: a PostgreSQL URL, a SQLite file, or `:memory:`, which keeps it no longer than the process. */
export async function openStore(database: string, shape: Shape, now?: () => Date): Promise<Store> {
  if (!isPostgresql(database)) return openSqliteStore(database, shape, now);
  // Its driver is loaded by the shops that use it alone.
  const { openPostgresqlStore } = await import("./postgresql/open.ts");
  return openPostgresqlStore(database, shape, now);
}

/** A database as messages may name it: without user and password. */
export function shownDatabase(database: string): string {
  return isPostgresql(database) ? readAddress(database).shown : database;
}
