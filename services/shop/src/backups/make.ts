import { existsSync, readFileSync, renameSync, rmSync } from "node:fs";
import { dirname } from "node:path";
import type { KeySettings } from "../signing/start.ts";
import { DatabaseFileError } from "../store/database-file-error.ts";
import { checkPages, contentOf, encloseIn } from "../store/files.ts";
import type { Kind } from "../store/kind.ts";
import { flushFile } from "../store/private-file.ts";
import { SERVICE_VERSION } from "../version.ts";
import { holdsSealingKey, MANIFEST, readBackup, SIGNING_KEYS, signingKeyIdsOf } from "./read.ts";
import type { Manifest } from "./schema.ts";

/** Where what is backed up comes from. */
export type BackupSource = {
  /** Copies the database into a new file. */
  readonly copyTo: (file: string) => Promise<void>;
  readonly kinds: readonly Kind[];
  /** Where what opens the signing keys is. What is in a file is enclosed, what the settings have is not. */
  readonly keySettings: Pick<KeySettings, "signingKeys" | "sealingKey">;
  readonly now: () => Date;
};

const IN_MEMORY = ":memory:";

/**
 * Makes a backup: one new file with every record, the history, the signing keys, what opens them unless it is in the settings, and a manifest. It has its name only once
 * it has been opened, read to the last page and counted again. Throws when there is a file of that name; nothing half is left.
 */
export async function makeBackup(file: string, source: BackupSource): Promise<Manifest> {
  if (existsSync(file)) throw new DatabaseFileError(`${file} is there already. Choose another name.`);
  const partial = `${file}.partial`;
  rmSync(partial, { force: true });
  try {
    await source.copyTo(partial);
    const manifest = enclose(partial, source);
    await checkPages(partial);
    readBackup(partial, source.kinds);
    flushFile(partial);
    renameSync(partial, file);
    flushFile(dirname(file));
    return manifest;
  } catch (error) {
    rmSync(partial, { force: true });
    throw error;
  }
}

function enclose(partial: string, { kinds, keySettings, now }: BackupSource): Manifest {
  const { signingKeys: file, sealingKey } = keySettings;
  const isInFile = file !== IN_MEMORY && sealingKey === undefined;
  const keys = isInFile ? readFileSync(file, "utf8") : undefined;
  const manifest: Manifest = {
    format: 1,
    createdAt: now().toISOString(),
    serviceVersion: SERVICE_VERSION,
    ...contentOf(partial, kinds),
    signingKeyIds: signingKeyIdsOf(partial, keys),
    hasSealingKey: holdsSealingKey(keys),
  };
  encloseIn(partial, {
    [MANIFEST]: JSON.stringify(manifest),
    ...(keys !== undefined && { [SIGNING_KEYS]: keys }),
  });
  return manifest;
}
