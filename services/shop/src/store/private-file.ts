import {
  chmodSync,
  closeSync,
  fchmodSync,
  fsyncSync,
  openSync,
  renameSync,
  statSync,
  writeSync,
} from "node:fs";
import { dirname } from "node:path";

const OWNER_ONLY = 0o600;
const OTHERS = 0o077;
const PERMISSIONS = 0o777;

/**
 * Writes a text so that the file is the old one or the new one, whole and on the disk, and only its owner's to read. `fresh` is where it
 * is written first: one of its own for each process, when several may write the file at once.
 */
export function writePrivateFile(file: string, text: string, fresh = `${file}.new`): void {
  const handle = openSync(fresh, "w", OWNER_ONLY);
  try {
    fchmodSync(handle, OWNER_ONLY);
    writeSync(handle, text);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  renameSync(fresh, file);
  flushFile(dirname(file));
}

/** Makes an empty file that only its owner reads. Throws when it is there already. */
export function makePrivateFile(file: string): void {
  closeSync(openSync(file, "wx", OWNER_ONLY));
}

/** Takes from others the right to a file, if they have one and it is ours to take. */
export function makePrivate(file: string): void {
  const status = statSync(file, { throwIfNoEntry: false });
  if (status === undefined || (status.mode & OTHERS) === 0) return;
  try {
    chmodSync(file, OWNER_ONLY);
  } catch {
    // Of another owner, who decides who reads it.
  }
}

/** The mode of a file that others than its owner may read, in octal; undefined when nobody else may, or it is not there. */
export function modeForOthers(file: string): string | undefined {
  const status = statSync(file, { throwIfNoEntry: false });
  // Windows has no such permissions and shows all of them.
  if (status === undefined || process.platform === "win32" || (status.mode & OTHERS) === 0) return undefined;
  return (status.mode & PERMISSIONS).toString(8);
}

/** What was written to a file, or a renaming in a folder, is on the disk. */
export function flushFile(path: string): void {
  const handle = openSync(path, "r");
  fsyncSync(handle);
  closeSync(handle);
}
