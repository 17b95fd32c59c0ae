import { existsSync, statSync } from "node:fs";
import type { Database as Sqlite } from "better-sqlite3";
import { DatabaseFileError } from "../database-file-error.ts";
import type { ChainHead } from "../head.ts";
import type { MovedRow, MovedTable, Side, Target } from "../move/side.ts";
import {
  HEAD,
  insertInto,
  keepAssigned,
  MAKE_MOVING,
  MOVING,
  selectAfter,
  selectLast,
} from "../move/statements.ts";
import { openConnection } from "./connection.ts";
import { hasTable, openAlone } from "./copy.ts";
import { migrate } from "./migrate.ts";
import { MIGRATIONS_FOLDER } from "./open.ts";

const place = () => "?";

/** A file that is moved from. Throws a DatabaseFileError when somebody has it open. */
export function openSqliteSource(file: string): Side {
  return sideOf(openAlone(file));
}

/** A file that is moved into: a new one, or one that the same move was cut off in. Throws a DatabaseFileError for any other. */
export function openSqliteTarget(file: string, head: ChainHead | undefined, now: Date): Target {
  const isNew = !existsSync(file) || statSync(file).size === 0;
  const made = openConnection(file);
  try {
    if (!isNew && !hasTable(made, MOVING) && !isBare(made)) throw notEmpty(file);
    if (!hasTable(made, MOVING)) {
      migrate(made, MIGRATIONS_FOLDER, now);
      made.transaction(() => {
        made.exec(MAKE_MOVING);
        made.prepare(`INSERT INTO ${MOVING} VALUES (?, ?)`).run(head?.sequence ?? null, head?.hash ?? null);
      })();
    }
  } finally {
    made.close();
  }
  return targetOf(file, openConnection(file));
}

function targetOf(file: string, sqlite: Sqlite): Target {
  // Whole tables come one after the other: what points where is checked at the end.
  sqlite.pragma("foreign_keys = OFF");
  return {
    ...sideOf(sqlite),
    movedHead: async () =>
      sqlite.prepare<[], ChainHead>(`SELECT sequence, hash FROM ${MOVING} WHERE sequence IS NOT NULL`).get(),
    write: async (table, columns, rows) => write(sqlite, table, columns, rows),
    finish: async () => {
      const violations = sqlite.pragma("foreign_key_check");
      if (Array.isArray(violations) && violations.length > 0)
        throw new DatabaseFileError(`${file} has rows that point nowhere after the move.`);
      sqlite.exec(`DROP TABLE ${MOVING}`);
    },
  };
}

function write(
  sqlite: Sqlite,
  table: MovedTable,
  columns: readonly string[],
  rows: readonly MovedRow[],
): void {
  const { assigned } = table;
  const insert = sqlite.prepare(insertInto(table, columns, place));
  const keep = assigned === undefined ? undefined : sqlite.prepare(keepAssigned(table, assigned, place));
  sqlite
    .transaction(() => {
      for (const row of rows) {
        insert.run(...row);
        if (assigned !== undefined) keep?.run(row[columns.indexOf(assigned)], row[columns.indexOf("id")]);
      }
    })
    .immediate();
}

function sideOf(sqlite: Sqlite): Side {
  return {
    columns: async (table) =>
      sqlite
        .prepare<[string], string>("SELECT name FROM pragma_table_xinfo(?) WHERE hidden = 0 ORDER BY name")
        .pluck()
        .all(table),
    rowsAfter: async (table, columns, after, most) =>
      sqlite
        .prepare<unknown[], unknown[]>(selectAfter(table, columns, after === undefined, place))
        .raw()
        .all(...(after ?? []), most),
    lastKey: async (table) => sqlite.prepare<[], unknown[]>(selectLast(table)).raw().get(),
    head: async () => sqlite.prepare<[], ChainHead>(HEAD).get(),
    close: async () => void sqlite.close(),
  };
}

/** Whether nothing has happened in it yet: a move was cut off just after it had made the tables. */
function isBare(sqlite: Sqlite): boolean {
  return hasTable(sqlite, "events") && sqlite.prepare("SELECT 1 FROM events").get() === undefined;
}

function notEmpty(file: string): DatabaseFileError {
  return new DatabaseFileError(`${file} is not empty. Name a new file.`);
}
