import Sqlite from "better-sqlite3";
import { getTableConfig } from "drizzle-orm/sqlite-core";
import { expect, test } from "vitest";
import { answers, events } from "../store/history-tables.ts";
import { migrate } from "../store/sqlite/migrate.ts";
import { MIGRATIONS_FOLDER } from "../store/sqlite/open.ts";
import { KINDS } from "./kinds.ts";

test("the migrations make exactly the tables and columns that queries expect", () => {
  const sqlite = new Sqlite(":memory:");
  migrate(sqlite, MIGRATIONS_FOLDER, new Date());
  const made = sqlite
    .prepare(
      "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT IN ('migrations', 'derivations', 'leases') ORDER BY name",
    )
    .pluck()
    .all();
  const expected = [...KINDS.map(({ table }) => table), events, answers].map(getTableConfig);
  // What SQLite keeps of the word index is its own business.
  expect(made.filter((name) => !String(name).startsWith("bit_index"))).toEqual(
    expected.map(({ name }) => name).sort(),
  );
  for (const { name, columns } of expected) {
    const found = sqlite
      .prepare<[], { name: string; notnull: number; pk: number }>(`PRAGMA table_xinfo(${name})`)
      .all()
      .map((column) => ({ name: column.name, isNeeded: column.notnull === 1 || column.pk > 0 }));
    const wanted = columns.map((column) => ({
      name: column.name,
      isNeeded: column.notNull || column.primary,
    }));
    expect(found.sort(byName), name).toEqual(wanted.sort(byName));
  }
  sqlite.close();
});

function byName(one: { readonly name: string }, other: { readonly name: string }): number {
  return one.name < other.name ? -1 : 1;
}
