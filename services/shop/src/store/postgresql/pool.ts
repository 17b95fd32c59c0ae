import pg from "pg";
import type { Address } from "./address.ts";

/** Types whose values are read as SQLite gives them, so that a record has one digest whatever keeps it. */
const READERS: ReadonlyMap<number, (text: string) => unknown> = new Map<number, (text: string) => unknown>([
  [pg.types.builtins.INT8, Number],
  [pg.types.builtins.BOOL, (text) => (text === "t" ? 1 : 0)],
  [pg.types.builtins.JSON, (text) => text],
]);

/** One connection for work that may take as long as it takes: migrations, and what is derived again. */
export function openPatientPool({ pool }: Address): pg.Pool {
  return openPool({ pool: { ...pool, max: 1, query_timeout: 0 } });
}

/** Connections to a database, opened when they are needed. */
export function openPool({ pool }: Pick<Address, "pool">): pg.Pool {
  const opened = new pg.Pool({
    ...pool,
    pipeline: true,
    types: {
      getTypeParser: (oid: number, format?: "text" | "binary") =>
        READERS.get(oid) ?? pg.types.getTypeParser(oid, format),
    },
  });
  // A connection that breaks while nobody uses it is replaced by the next one: nothing is lost.
  opened.on("error", () => undefined);
  // One that breaks in use fails what it was asked; that it says so as well must not end the process.
  opened.on("connect", (client) => void client.on("error", () => undefined));
  return opened;
}
