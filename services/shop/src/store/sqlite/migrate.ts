import type { Database as Sqlite } from "better-sqlite3";
import {
  type Applied,
  type Migration,
  MigrationError,
  migrationsIn,
  missingAmong,
  requireUsable,
} from "../migrations.ts";
import { BEING_MOVED_INTO, MOVING } from "../move/statements.ts";
import { makePrivateFile } from "../private-file.ts";

const LEDGER = `CREATE TABLE IF NOT EXISTS migrations (
  name TEXT PRIMARY KEY,
  sha256 TEXT NOT NULL,
  applied_at TEXT NOT NULL
) STRICT`;

/**
 * Brings the database to this code's level: all missing files in one transaction, or none. A database that held
 * data is first copied beside itself. A database newer than the code, or made by other files than these, is refused.
 */
export function migrate(
  sqlite: Sqlite,
  folder: string,
  now: Date,
): { applied: string[]; copy: string | undefined } {
  const migrations = migrationsIn(folder);
  requireOwn(sqlite);
  sqlite.exec(LEDGER);
  const missing = missingFrom(sqlite, migrations);
  const first = missing[0];
  if (first === undefined) return { applied: [], copy: undefined };
  const copy = copyBefore(sqlite, first.name, missing.length < migrations.length, now);
  // SQLite ignores this pragma inside a transaction, and a table rebuilt with keys on would cascade.
  sqlite.pragma("foreign_keys = OFF");
  try {
    const applied = sqlite.transaction(() => applyMissing(sqlite, migrations, now)).exclusive();
    return { applied, copy };
  } finally {
    sqlite.pragma("foreign_keys = ON");
  }
}

/** Throws for a database that this service did not make, or that is a backup: neither is to be built on. */
export function requireOwn(sqlite: Sqlite): void {
  const tables = sqlite
    .prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table'")
    .pluck()
    .all();
  if (tables.includes("enclosed")) {
    throw new MigrationError("This is a backup. Put it in place with the command `restore`.");
  }
  if (tables.includes(MOVING)) throw new MigrationError(BEING_MOVED_INTO);
  if (tables.length > 0 && !tables.includes("migrations")) {
    throw new MigrationError("This database is not this service's own. Name another file.");
  }
}

/** Whether every file in the folder has been applied, and nothing else. */
export function isMigrated(sqlite: Sqlite, folder: string): boolean {
  return missingFrom(sqlite, migrationsIn(folder)).length === 0;
}

/** Throws a MigrationError when a program with this folder cannot go on with the database as it is by now. */
export function requireUsableBy(sqlite: Sqlite, folder: string): void {
  requireUsable(migrationsIn(folder), appliedTo(sqlite));
}

function appliedTo(sqlite: Sqlite): Applied[] {
  return sqlite.prepare<[], Applied>("SELECT name, sha256 FROM migrations ORDER BY name").all();
}

function missingFrom(sqlite: Sqlite, migrations: readonly Migration[]): Migration[] {
  return missingAmong(migrations, appliedTo(sqlite));
}

function copyBefore(sqlite: Sqlite, name: string, holdsData: boolean, now: Date): string | undefined {
  if (!holdsData || sqlite.memory) return undefined;
  const copy = `${sqlite.name}.before-${name.slice(0, 4)}-${now.toISOString().replaceAll(":", "")}`;
  // SQLite fills an empty file, and leaves it as private as it was made.
  makePrivateFile(copy);
  sqlite.prepare("VACUUM INTO ?").run(copy);
  return copy;
}

function applyMissing(sqlite: Sqlite, migrations: readonly Migration[], now: Date): string[] {
  // Read again inside the transaction: another process may have been first.
  const missing = missingFrom(sqlite, migrations);
  const record = sqlite.prepare("INSERT INTO migrations (name, sha256, applied_at) VALUES (?, ?, ?)");
  for (const { name, sql, sha256 } of missing) {
    sqlite.exec(sql);
    record.run(name, sha256, now.toISOString());
  }
  const violations = sqlite.pragma("foreign_key_check");
  if (Array.isArray(violations) && violations.length > 0) {
    throw new MigrationError(
      `A migration left ${violations.length} rows that point nowhere. Nothing was changed.`,
    );
  }
  return missing.map(({ name }) => name);
}
