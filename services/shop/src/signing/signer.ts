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
import { damaged, type KeptKey, readKeyFile, writeKeyFile } from "./key-file.ts";

/** What checking a signed text found. `typ` says what kind of statement it is; a caller must look at it. */
export type Verification =
  | {
      readonly kind: "signed";
      readonly payload: unknown;
      readonly typ: string | undefined;
      readonly signingKeyId: string;
    }
  | { readonly kind: "key-unknown" }
  /** Somebody else may have signed it: the key is known to be in other hands. */
  | { readonly kind: "key-compromised" }
  | { readonly kind: "not-signed" };

/** A signing key without its private half. */
export type PublicKey = {
  /** Its thumbprint (RFC 7638): the `kid` of all that it signs. */
  readonly id: string;
  readonly createdAt: string;
  readonly retiredAt?: string;
  readonly compromisedAt?: string;
  /** The public key itself, as `x` of an OKP key (RFC 8037). */
  readonly x: string;
};

/** Signs for the service, and recognises what it signed. */
export type Signer = {
  /** The payload in canonical JSON as a compact JWS (RFC 7515) by the current key; `typ` names the kind of statement. */
  readonly sign: (payload: object, typ: string) => Promise<string>;
  /** Checks a compact JWS against the current key and all earlier ones. */
  readonly verify: (jws: string) => Promise<Verification>;
  /** Oldest first; the last one is the current one. */
  readonly publicKeys: () => readonly PublicKey[];
  /** Signs with a new key from now on. The earlier one can still be checked against, and can no longer sign. */
  readonly rotate: () => Promise<void>;
  /** Ends everything that a key signed; the current one is retired first. False when there is no such key. */
  readonly compromise: (id: string) => Promise<boolean>;
};

/** RFC 8037, section 3.1. */
const ALGORITHM = "EdDSA";
const CURVE = "Ed25519";
const IN_MEMORY = ":memory:";

/**
 * The signer whose keys are in a file, made at the first start; `:memory:` keeps them nowhere. Throws a ConfigError
 * for a file that cannot be read, is damaged, or cannot be written.
 */
export async function openSigner(file: string, now: () => Date): Promise<Signer> {
  const save = (keys: readonly KeptKey[]) => {
    if (file !== IN_MEMORY) writeKeyFile(file, keys);
  };
  let keys = (file === IN_MEMORY ? undefined : readKeyFile(file)) ?? [];
  if (keys.length === 0) {
    keys = [await newKey(now())];
    save(keys);
  }
  const current = keys.at(-1);
  if (current === undefined || !(await areUsable(keys))) throw damaged(file, "its keys do not fit together");
  let signing = await privateKeyOf(current);
  let signingKeyId = current.kid;
  let rotation: Promise<void> = Promise.resolve();

  async function rotateNow(): Promise<void> {
    const at = now();
    const key = await newKey(at);
    const next = [...keys.map((each) => retired(each, at)), key];
    const imported = await privateKeyOf(key);
    save(next);
    keys = next;
    signing = imported;
    signingKeyId = key.kid;
  }

  async function compromiseNow(id: string): Promise<void> {
    if (id === signingKeyId) await rotateNow();
    const compromisedAt = now().toISOString();
    const next = keys.map((key) => (key.kid === id ? { compromisedAt, ...key } : key));
    save(next);
    keys = next;
  }

  /** One after the other: two at once would each retire the same key and one would be lost. */
  function inTurn(change: () => Promise<void>): Promise<void> {
    rotation = rotation.catch(() => {}).then(change);
    return rotation;
  }

  return {
    sign: (payload, typ) => signed(payload, { kid: signingKeyId, typ }, signing),
    verify: (jws) => verified(jws, keys),
    publicKeys: () => keys.map(publicKeyOf),
    rotate: () => inTurn(rotateNow),
    compromise: async (id) => {
      if (!keys.some(({ kid }) => kid === id)) return false;
      await inTurn(() => compromiseNow(id));
      return true;
    },
  };
}

/** The `kid` that a compact JWS names, checked or not. */
export function signingKeyIdOf(jws: string): string {
  return decodeProtectedHeader(jws).kid ?? "";
}

function signed(payload: object, header: { kid: string; typ?: string }, key: CryptoKey): Promise<string> {
  return new CompactSign(new TextEncoder().encode(canonicalText(payload)))
    .setProtectedHeader({ alg: ALGORITHM, ...header })
    .sign(key);
}

async function newKey(at: Date): Promise<KeptKey> {
  const { privateKey } = await generateKeyPair(ALGORITHM, { crv: CURVE, extractable: true });
  const { x = "", d = "" } = await exportJWK(privateKey);
  return { kid: await thumbprintOf(x), createdAt: at.toISOString(), x, d };
}

/** Once it is retired nobody needs its private half, so nobody can lose it. */
function retired({ d: _, ...key }: KeptKey, at: Date): KeptKey {
  return { retiredAt: at.toISOString(), ...key };
}

/** Whether only the last key can sign, each has its own thumbprint, and what the last one signs can be checked. */
async function areUsable(keys: readonly KeptKey[]): Promise<boolean> {
  for (const [index, { kid, x, d, retiredAt, compromisedAt }] of keys.entries()) {
    const isCurrent = index === keys.length - 1;
    if (isCurrent !== (d !== undefined) || isCurrent !== (retiredAt === undefined)) return false;
    if (isCurrent && compromisedAt !== undefined) return false;
    if (kid !== (await thumbprintOf(x))) return false;
  }
  const current = keys.at(-1);
  if (current === undefined) return false;
  try {
    const trial = await signed({}, { kid: current.kid }, await privateKeyOf(current));
    return (await verified(trial, keys)).kind === "signed";
  } catch {
    return false;
  }
}

async function verified(jws: string, keys: readonly KeptKey[]): Promise<Verification> {
  try {
    const { kid } = decodeProtectedHeader(jws);
    const key = keys.find((each) => each.kid === kid);
    if (key === undefined) return { kind: "key-unknown" };
    if (key.compromisedAt !== undefined) return { kind: "key-compromised" };
    const publicKey = await importJWK({ kty: "OKP", crv: CURVE, x: key.x }, ALGORITHM);
    const { payload, protectedHeader } = await compactVerify(jws, publicKey, { algorithms: [ALGORITHM] });
    const content: unknown = JSON.parse(new TextDecoder().decode(payload));
    return { kind: "signed", payload: content, typ: protectedHeader.typ, signingKeyId: key.kid };
  } catch {
    // Whatever is wrong with it, it is nothing that this service signed.
    return { kind: "not-signed" };
  }
}

async function privateKeyOf({ x, d = "" }: KeptKey): Promise<CryptoKey> {
  const key = await importJWK({ kty: "OKP", crv: CURVE, x, d }, ALGORITHM);
  if (key instanceof Uint8Array) throw new TypeError("an OKP key is never a shared secret");
  return key;
}

function publicKeyOf({ kid, createdAt, retiredAt, compromisedAt, x }: KeptKey): PublicKey {
  return {
    ...{ id: kid, createdAt, x },
    ...(retiredAt !== undefined && { retiredAt }),
    ...(compromisedAt !== undefined && { compromisedAt }),
  };
}

function thumbprintOf(x: string): Promise<string> {
  return calculateJwkThumbprint({ kty: "OKP", crv: CURVE, x });
}
