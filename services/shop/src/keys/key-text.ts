import { hash, randomBytes, timingSafeEqual } from "node:crypto";
import { newId } from "../store/id.ts";

/** A new key: what it is known by, and its text. */
export type KeyText = { readonly keyId: string; readonly text: string };

/** What a bearer sends, as it was written when the key was made. Keys made before they were short name themselves. */
export type ReadKey = { readonly text: string; readonly keyId?: string };

const SECRET_BYTES = 17;
const SECRET_LENGTH = 26;
const CHECKSUM_LENGTH = 6;
const GROUP_LENGTH = 8;

/** Base 32 without i, l, o and u: the first three are taken for digits when a key is read out. */
const SYMBOLS = "0123456789abcdefghjkmnpqrstvwxyz";
const BITS_PER_SYMBOL = 5;
const SHORT_KEY = /^rw_([0-9a-z]{8})_([0-9a-z]{8})_([0-9a-z]{8})_([0-9a-z]{8})$/;

const LONG_KEY = /^rw_([0-9a-f]{32})_([0-9a-f]{64})_([0-9a-f]{8})$/;
const LONG_CHECKSUM_LENGTH = 8;

/** What may be a passphrase that somebody chose. */
const PASSPHRASE = /^(?!rw_)[\x21-\x7e]{16,255}$/;

/**
 * What is kept of a key is a quick digest, which is enough for 130 random bits. A chosen one must be too long to be found from it by
 * trying: this one is the manager's until it is revoked.
 */
const LEAST_CHARACTERS = 32;
const LEAST_DIFFERENT = 10;

/** A new key: `rw_` and four groups of eight characters, 130 random bits and a checksum. Shown once, never stored. */
export function newKeyText(): KeyText {
  return keyTextFor(newId("key"));
}

/** The next text of a key, with a secret of its own. */
export function keyTextFor(keyId: string): KeyText {
  const secret = symbolsOf(randomBytes(SECRET_BYTES)).slice(0, SECRET_LENGTH);
  return { keyId, text: grouped(secret + checksumOf(secret)) };
}

/** The key a text claims to be, in any case and with o, i and l for what they are taken for; undefined when it is mistyped. */
export function readKeyText(text: string): ReadKey | undefined {
  const [, ...groups] = SHORT_KEY.exec(text.toLowerCase()) ?? [];
  if (groups.length > 0) {
    const symbols = groups.join("").replaceAll("o", "0").replaceAll(/[il]/g, "1");
    const isWhole = checksumOf(symbols.slice(0, SECRET_LENGTH)) === symbols.slice(SECRET_LENGTH);
    return isWhole ? { text: grouped(symbols) } : undefined;
  }
  const [, id, secret, checksum] = LONG_KEY.exec(text) ?? [];
  if (id === undefined || checksum !== longChecksumOf(`rw_${id}_${secret}`)) return undefined;
  return { text, keyId: `key_${id}` };
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

/** What is stored of a key. A random secret of 130 bits needs no slow hash. */
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
function checksumOf(secret: string): string {
  return symbolsOf(sha256(`rw_${secret}`)).slice(0, CHECKSUM_LENGTH);
}

function longChecksumOf(body: string): string {
  return sha256(body).toString("hex").slice(0, LONG_CHECKSUM_LENGTH);
}

/** Bytes as symbols of five bits each; what is left over at the end is dropped. */
function symbolsOf(bytes: Buffer): string {
  let symbols = "";
  let waiting = 0;
  let bits = 0;
  for (const byte of bytes) {
    waiting = (waiting << 8) | byte;
    for (bits += 8; bits >= BITS_PER_SYMBOL; bits -= BITS_PER_SYMBOL) {
      symbols += SYMBOLS.charAt((waiting >> (bits - BITS_PER_SYMBOL)) & (SYMBOLS.length - 1));
    }
    waiting &= (1 << bits) - 1;
  }
  return symbols;
}

function grouped(symbols: string): string {
  const groups = symbols.match(new RegExp(`.{${GROUP_LENGTH}}`, "g")) ?? [];
  return ["rw", ...groups].join("_");
}

function sha256(text: string): Buffer {
  return hash("sha256", text, "buffer");
}
