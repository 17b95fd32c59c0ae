import { hash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { DatabaseFileError } from "./database-file-error.ts";

export type Migration = { readonly name: string; readonly sql: string; readonly sha256: string };
export type Applied = { readonly name: string; readonly sha256: string };

const FILE_NAME = /^\d{4}-[a-z0-9-]+\.sql$/;

/** Thrown if the database and this code do not belong together. Nothing was changed. */
export class MigrationError extends DatabaseFileError {}

/** The migrations of a folder in the order in which they are applied. */
export function migrationsIn(folder: string): Migration[] {
  return readdirSync(folder)
    .filter((name) => FILE_NAME.test(name))
    .sort()
    .map((name) => {
      const sql = readFileSync(join(folder, name), "utf8");
      return { name, sql, sha256: hash("sha256", sql) };
    });
}

/** What a file is called that an earlier program cannot work after; every other one leaves it everything it needs. */
const CONTRACTS = /-contract\.sql$/;

/**
 * Whether a program with these migrations can go on with a database that these were applied to: all of its own and, by a newer
 * program, none that takes away what it needs. Throws a MigrationError that says why not.
 */
export function requireUsable(migrations: readonly Migration[], applied: readonly Applied[]): void {
  const newer = applied.find(
    ({ name }) => CONTRACTS.test(name) && !migrations.some((own) => own.name === name),
  );
  if (newer !== undefined) {
    throw new MigrationError(
      `A newer program has changed the database (${newer.name}) so that this one cannot go on. Start the newer program here too.`,
    );
  }
  const [missing] = missingAmong(
    migrations,
    applied.filter(({ name }) => migrations.some((own) => own.name === name)),
  );
  if (missing === undefined) return;
  throw new MigrationError(
    `The database lacks ${missing.name}: an earlier one was put in place. Start the service again.`,
  );
}

/** Whether a database can be gone on with, and the reason if it cannot. */
export function levelOf(require: () => void): { readonly migrations: boolean; readonly reason?: string } {
  try {
    require();
    return { migrations: true };
  } catch (error) {
    return { migrations: false, ...(error instanceof MigrationError && { reason: error.message }) };
  }
}

/** Those that have not been applied. Throws a MigrationError for a database that is newer, or was made by other files than these. */
export function missingAmong(migrations: readonly Migration[], applied: readonly Applied[]): Migration[] {
  for (const { name, sha256 } of applied) {
    const known = migrations.find((migration) => migration.name === name);
    if (known === undefined) {
      throw new MigrationError(
        `The database is newer than this program: it knows ${name}. Use a newer program.`,
      );
    }
    if (known.sha256 !== sha256) {
      throw new MigrationError(`${name} was edited after it was applied. Put the released file back.`);
    }
  }
  return migrations.filter(({ name }) => !applied.some((each) => each.name === name));
}
