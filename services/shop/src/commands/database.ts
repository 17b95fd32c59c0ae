import { existsSync } from "node:fs";
import type { Config } from "../config.ts";
import { openShopStore } from "../rooms/store.ts";
import { isAtLevel, isPostgresql, shownDatabase } from "../store/open.ts";
import type { Store } from "../store/store.ts";
import { CommandError } from "./command.ts";

/** Throws when there is no database: a command must not make one. */
export function requireDatabase({ database }: Pick<Config, "database">): void {
  if (isPostgresql(database) || existsSync(database)) return;
  throw new CommandError(`RIMWISE_DATABASE: there is no database at ${database}. Name the shop's own.`);
}

/** Does something with the shop's database, which the service may have open too, and closes it. */
export async function withStore<Result>(
  config: Config,
  act: (store: Store) => Promise<Result>,
): Promise<Result> {
  requireDatabase(config);
  if (!(await isAtLevel(config.database))) {
    throw new CommandError(
      "The database is of an earlier version. Start the service once, which brings it to this one.",
    );
  }
  const store = await openShopStore(config.database);
  try {
    return await act(store);
  } finally {
    await store.close();
  }
}

/** Throws for a database that is no file: PostgreSQL's own tools copy and replace it. */
export function requireFile(database: string, tool: "pg_dump" | "pg_restore"): void {
  if (!isPostgresql(database)) return;
  throw new CommandError(
    `RIMWISE_DATABASE: ${shownDatabase(database)} is no file. Use ${tool}, which comes with PostgreSQL: services/shop/docs/postgresql.md shows how.`,
  );
}
