import { hashes, verify } from "@noble/ed25519";
import { sha512 } from "@noble/hashes/sha2.js";

hashes.sha512 = sha512;

/** Whether an Ed25519 signature (RFC 8032) is by this key, computed without the platform. Throws for what is no key or signature. */
export function isSignedBy(
  publicKey: Uint8Array<ArrayBuffer>,
  signature: Uint8Array<ArrayBuffer>,
  signed: Uint8Array<ArrayBuffer>,
): boolean {
  return verify(signature, signed, publicKey, { zip215: false });
}
