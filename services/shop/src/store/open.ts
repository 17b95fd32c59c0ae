import { isPostgresql, readAddress } from "./postgresql/address.ts";
import { isAtLevel as isFileAtLevel, openSqliteStore } from "./sqlite/open.ts";
import type { Shape, Store } from "./store.ts";

export { isPostgresql };

/** Opens the database of a shop: a PostgreSQL URL, a SQLite file, or `:memory:`, which keeps it no longer than the process. */
export async function openStore(database: string, shape: Shape, now?: () => Date): Promise<Store> {
  if (!isPostgresql(database)) return openSqliteStore(database, shape, now);
  // Its driver is loaded by the shops that use it alone.
  const { openPostgresqlStore } = await import("./postgresql/open.ts");
  return openPostgresqlStore(database, shape, now);
}

/** Whether a shop's database is at this program's level. Throws when there is none, or one that is newer, or not this service's own. */
export async function isAtLevel(database: string): Promise<boolean> {
  if (!isPostgresql(database)) return isFileAtLevel(database);
  const { isShopAtLevel } = await import("./postgresql/open.ts");
  return isShopAtLevel(database);
}

/** A database as messages may name it: without user and password. */
export function shownDatabase(database: string): string {
  return isPostgresql(database) ? readAddress(database).shown : database;
}
