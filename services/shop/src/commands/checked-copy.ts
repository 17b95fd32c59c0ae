import { constants, copyFileSync, existsSync } from "node:fs";
import { join } from "node:path";
import { readBackup } from "../backups/read.ts";
import type { Manifest } from "../backups/schema.ts";
import type { Head, Proof } from "../proof/schema.ts";
import { KINDS } from "../rooms/kinds.ts";
import { openShopStore } from "../rooms/store.ts";
import { checkPages, removeEnclosed } from "../store/files.ts";
import { makePrivate, writePrivateFile } from "../store/private-file.ts";
import { CommandError } from "./command.ts";
import { type KeyPlaces, proveWhole } from "./proof.ts";

/** What a backup holds, taken out of it and found good. */
export type CheckedCopy = {
  readonly database: string;
  /** Absent when there are none in it. */
  /** The file with what opens the signing keys. */
  readonly signingKeys: string | undefined;
  readonly manifest: Manifest;
  readonly proof: Proof;
};

/**
 * Takes a backup apart into an empty folder: its database, brought to this program's level, and what opens its keys: without it, the shop's `own` does. Every page, every
 * count and the whole history have been checked; the backup itself stays as it is. Throws what is wrong with it.
 */
export async function checkedCopy(
  backup: string,
  folder: string,
  own: KeyPlaces,
  head: Head | undefined,
): Promise<CheckedCopy> {
  if (!existsSync(backup)) throw new CommandError(`There is no file ${backup}.`);
  await checkPages(backup);
  const { manifest, signingKeys: keys } = readBackup(backup, KINDS);
  requireOpened(manifest, keys, own);
  const database = join(folder, "shop.sqlite");
  copyFileSync(backup, database, constants.COPYFILE_EXCL);
  makePrivate(database);
  removeEnclosed(database);
  const signingKeys = keys === undefined ? undefined : join(folder, "signing-keys.json");
  if (keys !== undefined && signingKeys !== undefined) writePrivateFile(signingKeys, keys);
  const store = await openShopStore(database);
  try {
    const proof = await proveWhole(
      store,
      { ...own, ...(signingKeys && { signingKeys, sealingKey: undefined }) },
      head,
    );
    return { database, signingKeys, manifest, proof };
  } finally {
    await store.close();
  }
}

/** Throws when nothing here opens the signing keys of a backup: whatever they signed would seem to be somebody else's. */
function requireOpened({ signingKeyIds }: Manifest, enclosed: string | undefined, own: KeyPlaces): void {
  if (signingKeyIds.length === 0 || enclosed !== undefined || own.sealingKey !== undefined) return;
  if (existsSync(own.signingKeys)) return;
  throw new CommandError(
    "This backup does not hold what opens its signing keys. Set RIMWISE_SEALING_KEY, or RIMWISE_SIGNING_KEYS, as the shop had it.",
  );
}
