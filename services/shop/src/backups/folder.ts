import { readdirSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { type BackupSource, makeBackup } from "./make.ts";
import { manifestOf } from "./read.ts";
import type { Backup } from "./schema.ts";

/** The names that the service gives: nobody else's file is touched. */
const OWN_NAME = /^rimwise-\d{8}T\d{9}Z\.sqlite$/;
const OWN_PARTIAL = /^rimwise-\d{8}T\d{9}Z\.sqlite\.partial$/;

/** Makes a backup in a folder, under a name of the service's own. Of the service's backups there only the newest stay, so many. */
export async function backUpInto(folder: string, keep: number, source: BackupSource): Promise<Backup> {
  for (const left of namesIn(folder, OWN_PARTIAL)) rmSync(join(folder, left), { force: true });
  const name = `rimwise-${source.now().toISOString().replaceAll(/[-:.]/g, "")}.sqlite`;
  const manifest = await makeBackup(join(folder, name), source);
  for (const old of namesIn(folder, OWN_NAME).slice(0, -keep)) rmSync(join(folder, old), { force: true });
  return { name, sizeBytes: sizeOf(folder, name), ...manifest };
}

/** The service's backups in a folder, oldest first. */
export function backupsIn(folder: string): Backup[] {
  return namesIn(folder, OWN_NAME).flatMap((name) => {
    const manifest = manifestOf(join(folder, name));
    return manifest === undefined ? [] : [{ name, sizeBytes: sizeOf(folder, name), ...manifest }];
  });
}

function namesIn(folder: string, pattern: RegExp): string[] {
  return readdirSync(folder)
    .filter((name) => pattern.test(name))
    .sort();
}

function sizeOf(folder: string, name: string): number {
  return statSync(join(folder, name)).size;
}
