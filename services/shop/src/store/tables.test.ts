import { fileURLToPath } from "node:url";
import Sqlite from "better-sqlite3";
import { getTableConfig } from "drizzle-orm/sqlite-core";
import { expect, test } from "vitest";
import { migrate } from "./migrate.ts";
import * as tables from "./tables.ts";

const MIGRATIONS_FOLDER = fileURLToPath(new URL("../../../../migrations", import.meta.url));

test("the migrations make exactly the tables and columns that queries expect", () => {
  const sqlite = new Sqlite(":memory:");
  migrate(sqlite, MIGRATIONS_FOLDER, new Date());
  const made = sqlite
    .prepare("SELECT name FROM sqlite_master WHERE type = 'table' AND name <> 'migrations' ORDER BY name")
    .pluck()
    .all();
  const { RECORD_TABLES: _, ...own } = tables;
  const expected = Object.values(own).map(getTableConfig);
  expect(made).toEqual(expected.map(({ name }) => name).sort());
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
