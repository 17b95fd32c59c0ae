import { fileURLToPath } from "node:url";
import Sqlite from "better-sqlite3";
import { getTableConfig } from "drizzle-orm/sqlite-core";
import { expect, test } from "vitest";
import { migrate } from "./migrate.ts";
import * as history from "./tables/history.ts";
import { RECORD_TABLES } from "./tables.ts";

const MIGRATIONS_FOLDER = fileURLToPath(new URL("../../../../migrations", import.meta.url));

test("the migrations make exactly the tables and columns that queries expect", () => {
  const sqlite = new Sqlite(":memory:");
  migrate(sqlite, MIGRATIONS_FOLDER, new Date());
  const made = sqlite
    .prepare("SELECT name FROM sqlite_master WHERE type = 'table' AND name <> 'migrations' ORDER BY name")
    .pluck()
    .all();
  const tables = new Set([...Object.values(RECORD_TABLES), ...Object.values(history)]);
  const expected = [...tables].map(getTableConfig);
  // What SQLite keeps of the word index is its own business.
  expect(made.filter((name) => !String(name).startsWith("bit_index"))).toEqual(
    expected.map(({ name }) => name).sort(),
  );
  for (const { name, columns } of expected) {
    const found = sqlite
      .prepare<[], { name: string; notnull: number; pk: number }>(`PRAGMA table_info(${name})`)
      .all()
      .map((column) => ({ name: column.name, isNeeded: column.notnull === 1 || column.pk > 0 }));
    const wanted = columns.map((column) => ({
      name: column.name,
      isNeeded: column.notNull || column.primary,
    }));
    expect(found, name).toEqual(wanted);
  }
  sqlite.close();
});
