import { existsSync } from "node:fs";
import type { Config } from "../config.ts";
import { openShopStore } from "../rooms/store.ts";
import { isAtLevel } from "../store/files.ts";
import { isPostgresql } from "../store/open.ts";
import type { Store } from "../store/store.ts";
import { CommandError } from "./command.ts";

/** Throws when there is no database: a command must not make one. */
export function requireDatabase({ database }: Config): void {
  requireFile(database);
  if (existsSync(database)) return;
  throw new CommandError(`RIMWISE_DATABASE: there is no database at ${database}. Name the shop's own.`);
}

/** Does something with the shop's database, which the service may have open too, and closes it. */
export async function withStore<Result>(
  config: Config,
  act: (store: Store) => Promise<Result>,
): Promise<Result> {
  requireDatabase(config);
  if (!isAtLevel(config.database)) {
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

/** Throws for a database that is no file: a command that copies, opens or replaces one has nothing to work on. */
export function requireFile(database: string): void {
  if (!isPostgresql(database)) return;
  throw new CommandError(
    "RIMWISE_DATABASE: this command works on SQLite files. For PostgreSQL use its own tools, such as pg_dump.",
  );
}
