import { statedOf } from "./decide.ts";
import { publicKeyOf, readWith, signingKeyIdOf } from "./key-pair.ts";
import type { SigningKeyRecord } from "./record-schema.ts";
import type { Sealing } from "./sealing.ts";

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

/** A key of the shop's own, with its private half as long as it has one. */
export type KnownKey = { readonly record: SigningKeyRecord; readonly d: string };

/** Tells the shop's own keys from those that were sealed with another sealing key, or changed by somebody without it. */
export function openKeys(
  records: readonly SigningKeyRecord[],
  sealing: Sealing,
): { readonly known: readonly KnownKey[]; readonly foreign: readonly SigningKeyRecord[] } {
  const opened = records.map((record) => ({ record, d: sealing.open(record.seal, statedOf(record)) }));
  return {
    known: opened.flatMap(({ record, d }) => (d === undefined ? [] : [{ record, d }])),
    foreign: opened.flatMap(({ record, d }) => (d === undefined ? [record] : [])),
  };
}

/** The keys that signatures are checked with: all of the shop's own but those that were lost. */
export function publicKeysOf(known: readonly KnownKey[]): PublicKey[] {
  return known.flatMap(({ record: { kid, createdAt, retiredAt, compromisedAt, lostAt, x } }) => {
    if (lostAt !== undefined) return [];
    const ends = { ...(retiredAt && { retiredAt }), ...(compromisedAt && { compromisedAt }) };
    return [{ ...{ id: kid, createdAt, x }, ...ends }];
  });
}

/** Checks a compact JWS against these keys. */
export async function verifyWith(jws: string, keys: readonly PublicKey[]): Promise<Verification> {
  const kid = signingKeyIdOf(jws);
  // Whatever is wrong with it, it is nothing that this service signed.
  if (kid === "") return { kind: "not-signed" };
  const key = keys.find(({ id }) => id === kid);
  if (key === undefined) return { kind: "key-unknown" };
  if (key.compromisedAt !== undefined) return { kind: "key-compromised" };
  const read = await readWith(await publicKeyOf(key.x), jws);
  return read === undefined ? { kind: "not-signed" } : { kind: "signed", ...read, signingKeyId: key.id };
}
