import { createCipheriv, createDecipheriv, randomBytes } from "node:crypto";
import { canonicalText } from "../store/canonical.ts";

/** Keeps a secret together with what is stated beside it: neither can be read or changed without the sealing key. */
export type Sealing = {
  readonly seal: (secret: string, stated: object) => string;
  /** The secret; undefined when it was sealed with another key, or something else is stated now. */
  readonly open: (seal: string, stated: object) => string | undefined;
};

/** AES-256 in Galois/Counter Mode (NIST SP 800-38D): a 96-bit nonce, new for each seal, and a 128-bit tag. */
const CIPHER = "aes-256-gcm";
const KEY_BYTES = 32;
const NONCE_BYTES = 12;
const TAG_BYTES = 16;

/** A sealing key as it is written: 32 bytes in hexadecimal. */
export const SEALING_KEY = "^[0-9a-fA-F]{64}$";

/** A new sealing key. */
export function newSealingKey(): string {
  return randomBytes(KEY_BYTES).toString("hex");
}

/** Seals with a key as it is written. */
export function sealingWith(sealingKey: string): Sealing {
  const key = Buffer.from(sealingKey, "hex");
  return {
    seal: (secret, stated) => {
      const nonce = randomBytes(NONCE_BYTES);
      const cipher = createCipheriv(CIPHER, key, nonce, { authTagLength: TAG_BYTES });
      cipher.setAAD(Buffer.from(canonicalText(stated)));
      const sealed = Buffer.concat([cipher.update(secret, "utf8"), cipher.final()]);
      return Buffer.concat([nonce, sealed, cipher.getAuthTag()]).toString("base64url");
    },
    open: (seal, stated) => {
      const bytes = Buffer.from(seal, "base64url");
      if (bytes.length < NONCE_BYTES + TAG_BYTES) return undefined;
      const nonce = bytes.subarray(0, NONCE_BYTES);
      const decipher = createDecipheriv(CIPHER, key, nonce, { authTagLength: TAG_BYTES });
      decipher.setAAD(Buffer.from(canonicalText(stated)));
      decipher.setAuthTag(bytes.subarray(-TAG_BYTES));
      try {
        const sealed = bytes.subarray(NONCE_BYTES, -TAG_BYTES);
        return Buffer.concat([decipher.update(sealed), decipher.final()]).toString("utf8");
      } catch {
        return undefined;
      }
    },
  };
}
