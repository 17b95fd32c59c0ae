import { hash, randomBytes, timingSafeEqual } from "node:crypto";
import { newId } from "../store/id.ts";

/** What a bearer sends, taken apart. */
export type KeyText = { readonly keyId: string; readonly text: string };

const SECRET_BYTES = 32;
const CHECKSUM_LENGTH = 8;
const KEY_TEXT = /^rw_([0-9a-f]{32})_([0-9a-f]{64})_([0-9a-f]{8})$/;

/** What may be a passphrase that somebody chose. */
const PASSPHRASE = /^(?!rw_)[\x21-\x7e]{16,255}$/;

/**
 * What is kept of a key is a quick digest, which is enough for 256 random bits. A chosen one must be too long to be found from it by
 * trying: this one is the manager's until it is revoked.
 */
const LEAST_CHARACTERS = 32;
const LEAST_DIFFERENT = 10;

/** A new key: `rw_<id>_<secret>_<checksum>`, 256 bits of secret. Shown once, never stored. */
export function newKeyText(): KeyText {
  return keyTextFor(newId("key"));
}

/** The next text of a key, with a secret of its own. */
export function keyTextFor(keyId: string): KeyText {
  const body = `rw_${keyId.slice("key_".length)}_${randomBytes(SECRET_BYTES).toString("hex")}`;
  return { keyId, text: `${body}_${checksumOf(body)}` };
}

/** The key a text claims to be, or undefined when it is mistyped. */
export function readKeyText(text: string): KeyText | undefined {
  const [, id, secret, checksum] = KEY_TEXT.exec(text) ?? [];
  if (id === undefined || checksum !== checksumOf(`rw_${id}_${secret}`)) return undefined;
  return { keyId: `key_${id}`, text };
}

/**
 * A key somebody chose for a new shop: a whole key of ours, or a passphrase of 32 to 255 visible ASCII characters, 10 of them different. A
 * passphrase that starts like one of our keys is a mistyped key, and refused.
 */
export function isFirstKey(text: string): boolean {
  const isLong = text.length >= LEAST_CHARACTERS && new Set(text).size >= LEAST_DIFFERENT;
  return (isPassphrase(text) && isLong) || readKeyText(text) !== undefined;
}

/** Whether a text can be a chosen passphrase; those are found by their digest, not by an id inside. */
export function isPassphrase(text: string): boolean {
  return PASSPHRASE.test(text);
}

/** What is stored of a key. A 256-bit random secret needs no slow hash. */
export function keyDigest(text: string): string {
  return sha256(text).toString("hex");
}

/** Whether a text has this digest, in a time that gives nothing away. */
export function matchesDigest(text: string, digest: string): boolean {
  const expected = Buffer.from(digest, "hex");
  const given = sha256(text);
  return expected.length === given.length && timingSafeEqual(expected, given);
}

/** Lets a mistyped key be refused, and a leaked one be found by a scanner, without the database. */
function checksumOf(body: string): string {
  return sha256(body).toString("hex").slice(0, CHECKSUM_LENGTH);
}

function sha256(text: string): Buffer {
  return hash("sha256", text, "buffer");
}
