import type { ChainHead } from "./head.ts";
import type { Side, Target } from "./move/side.ts";
import { isPostgresql, readAddress } from "./postgresql/address.ts";
import { whileUnused } from "./sqlite/copy.ts";
import { openSqliteSource, openSqliteTarget } from "./sqlite/move.ts";
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

/** Throws a DatabaseFileError when somebody has a shop's database open. */
export async function requireUnused(database: string): Promise<void> {
  if (!isPostgresql(database)) return whileUnused(database, () => undefined);
  const { requireUnusedShop } = await import("./postgresql/presence.ts");
  await requireUnusedShop(readAddress(database));
}

/** A shop's database to move from. Throws when somebody has it open. */
export async function openSource(database: string): Promise<Side> {
  if (!isPostgresql(database)) return openSqliteSource(database);
  const { openPostgresqlSource } = await import("./postgresql/move.ts");
  return openPostgresqlSource(database);
}

/** A database to move into. Throws when something else is in it. */
export async function openTarget(database: string, head: ChainHead | undefined, now: Date): Promise<Target> {
  if (!isPostgresql(database)) return openSqliteTarget(database, head, now);
  const { openPostgresqlTarget } = await import("./postgresql/move.ts");
  return openPostgresqlTarget(database, head, now);
}

/** A database as messages may name it: without user and password. */
export function shownDatabase(database: string): string {
  return isPostgresql(database) ? readAddress(database).shown : database;
}
