import { Ajv, type ValidateFunction } from "ajv";
import { keysIn } from "../signing/key-file.ts";
import { canonicalText } from "../store/canonical.ts";
import { DatabaseFileError } from "../store/database-file-error.ts";
import { contentOf, enclosedIn } from "../store/files.ts";
import type { Kind } from "../store/kind.ts";
import { type Manifest, ManifestSchema } from "./schema.ts";

/** Names of what is enclosed in a backup. */
export const MANIFEST = "manifest";
export const SIGNING_KEYS = "signing-keys";

/** A backup as it says it is. */
export type ReadBackup = { readonly manifest: Manifest; readonly signingKeys: string | undefined };

/**
 * Opens a backup and holds what is in it against its manifest: every count, the end of the history, the keys. Throws a
 * DatabaseFileError that says what is wrong.
 */
export function readBackup(file: string, kinds: readonly Kind[]): ReadBackup {
  const enclosed = enclosedIn(file);
  const manifest = enclosed && manifestIn(enclosed[MANIFEST]);
  if (manifest === undefined) throw new DatabaseFileError(`${file} is not a backup that this service made.`);
  const signingKeys = enclosed?.[SIGNING_KEYS];
  const content = contentOf(file, kinds);
  if (content.events !== (content.head?.sequence ?? 0))
    throw new DatabaseFileError(`${file} lacks events of its history.`);
  const { records, events, head, databaseLevel } = manifest;
  const said = { records, events, databaseLevel, ...(head !== undefined && { head }) };
  if (canonicalText(content) !== canonicalText(said)) {
    throw new DatabaseFileError(
      `${file} does not hold what its manifest says: it was changed after it was made.`,
    );
  }
  const ids = signingKeys === undefined ? [] : signingKeyIdsIn(signingKeys);
  if (ids.join() !== manifest.signingKeyIds.join()) {
    throw new DatabaseFileError(`${file} does not hold the signing keys that its manifest names.`);
  }
  return { manifest, signingKeys };
}

/** The manifest of a backup, without a look at the rest; undefined for what is none. */
export function manifestOf(file: string): Manifest | undefined {
  try {
    return manifestIn(enclosedIn(file)?.[MANIFEST]);
  } catch {
    return undefined;
  }
}

/** The ids of the keys in the text of a key file, oldest first. */
export function signingKeyIdsIn(text: string): string[] {
  return keysIn(text)?.map(({ kid }) => kid) ?? [];
}

let validator: ValidateFunction<Manifest> | undefined;

function manifestIn(text: string | undefined): Manifest | undefined {
  validator ??= new Ajv({ formats: { "date-time": true } }).compile<Manifest>(ManifestSchema);
  const isManifest = validator;
  const content = parsed(text ?? "");
  return isManifest(content) ? content : undefined;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
