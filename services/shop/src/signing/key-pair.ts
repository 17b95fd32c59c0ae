import {
  CompactSign,
  type CryptoKey,
  calculateJwkThumbprint,
  compactVerify,
  decodeProtectedHeader,
  exportJWK,
  generateKeyPair,
  importJWK,
} from "jose";
import { canonicalText } from "../store/canonical.ts";

/** An Ed25519 key as members of an OKP key (RFC 8037) with its thumbprint (RFC 7638). */
export type KeyPair = { readonly kid: string; readonly x: string; readonly d: string };

/** What a signed text says. */
export type Signed = { readonly payload: unknown; readonly typ: string | undefined };

/** RFC 8037, section 3.1. */
const ALGORITHM = "EdDSA";
const CURVE = "Ed25519";

export async function newKeyPair(): Promise<KeyPair> {
  const { privateKey } = await generateKeyPair(ALGORITHM, { crv: CURVE, extractable: true });
  const { x = "", d = "" } = await exportJWK(privateKey);
  return { kid: await thumbprintOf(x), x, d };
}

/** The private key to sign with. */
export function privateKeyOf({ x, d }: Pick<KeyPair, "x" | "d">): Promise<CryptoKey> {
  return imported({ x, d });
}

/** The public key to check with. */
export function publicKeyOf(x: string): Promise<CryptoKey> {
  return imported({ x });
}

/** The payload in canonical JSON as a compact JWS (RFC 7515). */
export function signedWith(
  key: CryptoKey,
  payload: object,
  header: { kid: string; typ?: string },
): Promise<string> {
  return new CompactSign(new TextEncoder().encode(canonicalText(payload)))
    .setProtectedHeader({ alg: ALGORITHM, ...header })
    .sign(key);
}

/** What a compact JWS says; undefined when this key has not signed it. */
export async function readWith(key: CryptoKey, jws: string): Promise<Signed | undefined> {
  try {
    const { payload, protectedHeader } = await compactVerify(jws, key, { algorithms: [ALGORITHM] });
    const content: unknown = JSON.parse(new TextDecoder().decode(payload));
    return { payload: content, typ: protectedHeader.typ };
  } catch {
    return undefined;
  }
}

/** The `kid` that a compact JWS names, checked or not; empty when it is none. */
export function signingKeyIdOf(jws: string): string {
  try {
    return decodeProtectedHeader(jws).kid ?? "";
  } catch {
    return "";
  }
}

/** Whether a key has its own thumbprint, and what it signs can be checked with its public half. */
export async function isWhole({ kid, x, d }: KeyPair): Promise<boolean> {
  if (!(await isNamedRight({ kid, x }))) return false;
  try {
    const trial = await signedWith(await privateKeyOf({ x, d }), {}, { kid });
    return (await readWith(await publicKeyOf(x), trial)) !== undefined;
  } catch {
    return false;
  }
}

/** Whether a public key has its own thumbprint. */
export async function isNamedRight({ kid, x }: Pick<KeyPair, "kid" | "x">): Promise<boolean> {
  return kid === (await thumbprintOf(x));
}

async function imported(members: { x: string; d?: string }): Promise<CryptoKey> {
  const key = await importJWK({ kty: "OKP", crv: CURVE, ...members }, ALGORITHM);
  if (key instanceof Uint8Array) throw new TypeError("an OKP key is never a shared secret");
  return key;
}

function thumbprintOf(x: string): Promise<string> {
  return calculateJwkThumbprint({ kty: "OKP", crv: CURVE, x });
}
