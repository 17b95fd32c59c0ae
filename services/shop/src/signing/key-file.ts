import { existsSync, readFileSync } from "node:fs";
import { Ajv } from "ajv";
import Type, { type Static } from "typebox";
import { ConfigError } from "../config.ts";
import { writePrivateFile } from "../store/private-file.ts";

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
    /** Since when nothing that it signed counts. */
    compromisedAt: Type.Optional(Type.String({ minLength: 1 })),
  },
  { additionalProperties: false },
);

const KeyFileSchema = Type.Object(
  { keys: Type.Array(KeptKeySchema, { minItems: 1 }) },
  { additionalProperties: false },
);

/** A signing key as the file keeps it: the members of an OKP key (RFC 8037) beside its times. */
export type KeptKey = Static<typeof KeptKeySchema>;

/** The keys in a file, oldest first; undefined if there is no file. Throws a ConfigError for a file that cannot be used. */
export function readKeyFile(file: string): KeptKey[] | undefined {
  if (!existsSync(file)) return undefined;
  const keys = keysOf(contentOf(file));
  if (keys === undefined) throw damaged(file, "it does not hold what this service wrote into it");
  return keys;
}

/** The keys in the text of such a file; undefined when it holds something else. */
export function keysIn(text: string): KeptKey[] | undefined {
  try {
    return keysOf(JSON.parse(text));
  } catch {
    return undefined;
  }
}

/** Writes the keys so that the file is the old one or the new one, whole and on the disk, and nobody else's to read. */
export function writeKeyFile(file: string, keys: readonly KeptKey[]): void {
  try {
    writePrivateFile(file, `${JSON.stringify({ keys }, null, 2)}\n`);
  } catch (cause) {
    throw new ConfigError(
      `RIMWISE_SIGNING_KEYS: the signing keys cannot be written to ${file}: ${reasonOf(cause)}.`,
      { cause },
    );
  }
}

/** The refusal of a key file. Starting with new keys instead would quietly disown all that was signed. */
export function damaged(file: string, what: string): ConfigError {
  return new ConfigError(
    `RIMWISE_SIGNING_KEYS: the signing keys in ${file} cannot be used: ${what}. Put a good copy back; or move the file away and set RIMWISE_ACCEPT_LOST_SIGNING_KEYS=yes to start with a new key, and nothing signed before can be checked.`,
  );
}

function keysOf(content: unknown): KeptKey[] | undefined {
  const isKeyFile = new Ajv().compile<Static<typeof KeyFileSchema>>(KeyFileSchema);
  return isKeyFile(content) ? content.keys : undefined;
}

function contentOf(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch (cause) {
    // The parser's message would quote the file, secret and all.
    throw damaged(file, cause instanceof SyntaxError ? "it is not JSON" : reasonOf(cause));
  }
}

function reasonOf(cause: unknown): string {
  return cause instanceof Error ? cause.message : String(cause);
}
