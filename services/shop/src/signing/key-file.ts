import { existsSync, linkSync, readFileSync, rmSync } from "node:fs";
import { Ajv } from "ajv";
import Type, { type Static } from "typebox";
import { ConfigError } from "../config.ts";
import { lazily } from "../http/lazily.ts";
import { writePrivateFile } from "../store/private-file.ts";
import { SEALING_KEY } from "./sealing.ts";

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
  {
    sealingKey: Type.Optional(Type.String({ pattern: SEALING_KEY })),
    /** Where earlier versions kept the signing keys themselves. They are taken over into the database. */
    keys: Type.Optional(Type.Array(KeptKeySchema, { minItems: 1 })),
  },
  { additionalProperties: false, minProperties: 1 },
);

/** A signing key as the file of an earlier version keeps it. */
export type KeptKey = Static<typeof KeptKeySchema>;

/** What opens the shop's signing keys. */
export type KeyFile = Static<typeof KeyFileSchema>;

/** What is in a file; undefined if there is no file. Throws a ConfigError for a file that cannot be used. */
export function readKeyFile(file: string): KeyFile | undefined {
  if (!existsSync(file)) return undefined;
  const read = contentOf(file);
  if (read === undefined) return undefined;
  const content = keyFileOf(read);
  if (content === undefined) throw damaged(file, "it does not hold what this service wrote into it");
  return content;
}

/** What is in the text of such a file; undefined when it holds something else. */
export function keyFileIn(text: string): KeyFile | undefined {
  try {
    return keyFileOf(JSON.parse(text));
  } catch {
    return undefined;
  }
}

/** Writes so that the file is the old one or the new one, whole and on the disk, and nobody else's to read. */
export function writeKeyFile(file: string, content: KeyFile): void {
  try {
    writePrivateFile(file, textOf(content), `${file}.${process.pid}.new`);
  } catch (cause) {
    throw notWritten(file, cause);
  }
}

/** Makes the file unless another process was first. */
export function makeKeyFile(file: string, content: KeyFile): void {
  const fresh = `${file}.${process.pid}`;
  try {
    writePrivateFile(fresh, textOf(content));
    linkSync(fresh, file);
  } catch (cause) {
    if (!(cause instanceof Error && "code" in cause && cause.code === "EEXIST"))
      throw notWritten(file, cause);
  } finally {
    rmSync(fresh, { force: true });
  }
}

/** The refusal of a key file. Starting with new keys instead would quietly disown all that was signed. */
export function damaged(file: string, what: string): ConfigError {
  return new ConfigError(
    `RIMWISE_SIGNING_KEYS: the signing keys in ${file} cannot be used: ${what}. Put a good copy back; or move the file away and set RIMWISE_ACCEPT_LOST_SIGNING_KEYS=yes to start with a new key, and nothing signed before can be checked.`,
  );
}

function textOf(content: KeyFile): string {
  return `${JSON.stringify(content, null, 2)}\n`;
}

function notWritten(file: string, cause: unknown): ConfigError {
  return new ConfigError(
    `RIMWISE_SIGNING_KEYS: the signing keys cannot be written to ${file}: ${reasonOf(cause)}.`,
    { cause },
  );
}

// Every start reads the file: whether this is a schema at all is for tests to say.
const keyFileCheck = lazily(() => new Ajv({ validateSchema: false }).compile<KeyFile>(KeyFileSchema));

function keyFileOf(content: unknown): KeyFile | undefined {
  const isKeyFile = keyFileCheck();
  return isKeyFile(content) ? content : undefined;
}

function contentOf(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch (cause) {
    // Another process that starts at the same time may have taken it away just now.
    if (cause instanceof Error && "code" in cause && cause.code === "ENOENT") return undefined;
    // The parser's message would quote the file, secret and all.
    throw damaged(file, cause instanceof SyntaxError ? "it is not JSON" : reasonOf(cause));
  }
}

function reasonOf(cause: unknown): string {
  return cause instanceof Error ? cause.message : String(cause);
}
