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
