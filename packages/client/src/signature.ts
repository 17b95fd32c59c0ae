import { bytesOf } from "./base64url.ts";
import type { JsonWebKey } from "./generated/models.ts";

/**
 * Whether an Ed25519 signature is by this key (RFC 8032, RFC 8037); undefined if it cannot be checked here. Platforms without the
 * algorithm, and pages served over plain HTTP, which get none, load a library for it.
 */
export async function isSigned(
  { kty, crv, x }: JsonWebKey,
  signature: Uint8Array<ArrayBuffer>,
  signed: Uint8Array<ArrayBuffer>,
): Promise<boolean | undefined> {
  if (kty !== "OKP" || crv !== "Ed25519") return false;
  // Pages served over plain HTTP have no `subtle`, whatever the platform's types say.
  const subtle: SubtleCrypto | undefined = globalThis.crypto?.subtle;
  if (subtle !== undefined) {
    const algorithm = { name: "Ed25519" };
    try {
      const key = await subtle.importKey("jwk", { kty, crv, x }, algorithm, false, ["verify"]);
      return await subtle.verify(algorithm, key, signature, signed);
    } catch (error) {
      if (!(error instanceof Error && error.name === "NotSupportedError")) return false;
    }
  }
  const library = await import("./ed25519.ts").catch(() => undefined);
  try {
    return library?.isSignedBy(bytesOf(x), signature, signed);
  } catch {
    return false;
  }
}
