import {
  closeSync,
  existsSync,
  fchmodSync,
  fsyncSync,
  openSync,
  readFileSync,
  renameSync,
  writeSync,
} from "node:fs";
import { dirname } from "node:path";
import { Ajv } from "ajv";
import Type, { type Static } from "typebox";
import { ConfigError } from "../config.ts";

/** Ed25519 key material: 32 bytes in base64url (RFC 8037, section 2). */
const KeyBytes = Type.String({ pattern: "^[A-Za-z0-9_-]{43}$" });

const KeptKeySchema = Type.Object(
  {
    kid: KeyBytes,
    createdAt: Type.String({ minLength: 1 }),
    x: KeyBytes,
    /** The private half: only the current key has one. */
    d: Type.Optional(KeyBytes),
    retiredAt: Type.Optional(Type.String({ minLength: 1 })),
  },
  { additionalProperties: false },
);

const KeyFileSchema = Type.Object(
  { keys: Type.Array(KeptKeySchema, { minItems: 1 }) },
  { additionalProperties: false },
);

/** A signing key as the file keeps it: the members of an OKP key (RFC 8037) beside its times. */
export type KeptKey = Static<typeof KeptKeySchema>;

const OWNER_ONLY = 0o600;

/** The keys in a file, oldest first; undefined if there is no file. Throws a ConfigError for a file that cannot be used. */
export function readKeyFile(file: string): KeptKey[] | undefined {
  if (!existsSync(file)) return undefined;
  const content = contentOf(file);
  const isKeyFile = new Ajv().compile<Static<typeof KeyFileSchema>>(KeyFileSchema);
  if (!isKeyFile(content)) throw damaged(file, "it does not hold what this service wrote into it");
  return content.keys;
}

/** Writes the keys so that the file is the old one or the new one, whole and on the disk, and nobody else's to read. */
export function writeKeyFile(file: string, keys: readonly KeptKey[]): void {
  const fresh = `${file}.new`;
  try {
    const handle = openSync(fresh, "w", OWNER_ONLY);
    fchmodSync(handle, OWNER_ONLY);
    writeSync(handle, `${JSON.stringify({ keys }, null, 2)}\n`);
    fsyncSync(handle);
    closeSync(handle);
    renameSync(fresh, file);
    flushFolder(dirname(file));
  } catch (cause) {
    throw new ConfigError(`The signing keys cannot be written to ${file}: ${reasonOf(cause)}.`, { cause });
  }
}

/** The refusal of a key file. Starting with new keys instead would quietly disown all that was signed. */
export function damaged(file: string, what: string): ConfigError {
  return new ConfigError(
    `The signing keys in ${file} cannot be used: ${what}. Put a good copy back; or move the file away to start with a new key, and nothing signed before can be checked.`,
  );
}

function contentOf(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch (cause) {
    // The parser's message would quote the file, secret and all.
    throw damaged(file, cause instanceof SyntaxError ? "it is not JSON" : reasonOf(cause));
  }
}

/** A renaming is on the disk only once its folder is. */
function flushFolder(folder: string): void {
  const handle = openSync(folder, "r");
  fsyncSync(handle);
  closeSync(handle);
}

function reasonOf(cause: unknown): string {
  return cause instanceof Error ? cause.message : String(cause);
}
