import Sqlite from "better-sqlite3";
import type { Column, Database, Row } from "./database.ts";

/** A SQLite file. */
export function openSqlite(file: string): Database {
  const sqlite = new Sqlite(file);
  const given = (values: readonly unknown[]) =>
    Object.fromEntries(values.map((value, index) => [index + 1, value]));

  async function run(sql: string, values: readonly unknown[] = []): Promise<void> {
    if (values.length === 0) sqlite.exec(sql);
    else sqlite.prepare<[object]>(sql).run(given(values));
  }

  async function rows(sql: string, values: readonly unknown[] = []): Promise<readonly Row[]> {
    const statement = sqlite.prepare<object[], Row>(sql);
    return values.length === 0 ? statement.all() : statement.all(given(values));
  }

  return {
    run,
    rows,
    tables: async () =>
      sqlite
        .prepare<[], string>(
          "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE 'bit_index%'",
        )
        .pluck()
        .all(),
    columns: async (table) =>
      sqlite
        .prepare<[string], { name: string; notnull: number; pk: number }>(
          'SELECT name, "notnull", pk FROM pragma_table_info(?)',
        )
        .all(table)
        .map(({ name, notnull, pk }): Column => ({ name, isRequired: notnull === 1 || pk === 1 })),
    drop: async (tables) => {
      sqlite.pragma("foreign_keys = OFF");
      for (const table of tables) sqlite.exec(`DROP TABLE "${table}"`);
    },
    pastTriggers: async (act) => {
      const triggers = sqlite
        .prepare<[], { name: string; sql: string }>(
          "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'events'",
        )
        .all();
      for (const { name } of triggers) sqlite.exec(`DROP TRIGGER ${name}`);
      await act();
      for (const { sql } of triggers) sqlite.exec(sql);
    },
    copyTo: async (database) => void sqlite.prepare("VACUUM INTO ?").run(database),
    close: async () => void sqlite.close(),
  };
}
