import { Ajv, type ValidateFunction } from "ajv";
import { keyFileIn } from "../signing/key-file.ts";
import { signingKeyKind } from "../signing/kind.ts";
import { canonicalText } from "../store/canonical.ts";
import { DatabaseFileError } from "../store/database-file-error.ts";
import { contentOf, enclosedIn, valuesIn } from "../store/files.ts";
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
  const ids = signingKeyIdsOf(file, signingKeys);
  const { signingKeyIds, hasSealingKey = false } = manifest;
  if (ids.join() !== signingKeyIds.join() || hasSealingKey !== holdsSealingKey(signingKeys)) {
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

/** The ids of the signing keys in a copy, oldest first; of an earlier version's, of those in the text of its key file. */
export function signingKeyIdsOf(file: string, keys: string | undefined): string[] {
  const kept = valuesIn(file, signingKeyKind, "kid");
  if (kept.length > 0 || keys === undefined) return kept;
  return keyFileIn(keys)?.keys?.map(({ kid }) => kid) ?? [];
}

/** Whether the text of a key file has the key that opens the signing keys. */
export function holdsSealingKey(keys: string | undefined): boolean {
  return keys !== undefined && keyFileIn(keys)?.sealingKey !== undefined;
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
