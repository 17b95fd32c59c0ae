import { creation, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Change } from "../store/port.ts";
import type { KeptKey } from "./key-file.ts";
import type { KeyPair } from "./key-pair.ts";
import { signingKeyKind } from "./kind.ts";
import type { SigningKeyRecord } from "./record-schema.ts";
import type { Sealing } from "./sealing.ts";

type Ends = Pick<SigningKeyRecord, "retiredAt" | "compromisedAt" | "lostAt">;

/** A decided change of a signing key, and the key as it is then. */
export type DecidedKey = { readonly record: SigningKeyRecord; readonly changes: readonly Change[] };

/** A key that the shop signs with from now on. */
export function createSigningKey({ kid, x, d }: KeyPair, sealing: Sealing, at: string): DecidedKey {
  return created({ kid, x }, d, at, sealing);
}

/** A key out of the file that earlier versions kept them in. */
export function takeOverSigningKey(kept: KeptKey, sealing: Sealing): DecidedKey {
  const { kid, x, d = "", createdAt, retiredAt, compromisedAt } = kept;
  const ends = { ...(retiredAt && { retiredAt }), ...(compromisedAt && { compromisedAt }) };
  return created({ kid, x, ...ends }, d, createdAt, sealing);
}

/** The key signs nothing any more: once it is retired nobody needs its private half, so nobody can lose it. */
export function retireSigningKey(key: SigningKeyRecord, sealing: Sealing, at: string): DecidedKey {
  return ended(key, { retiredAt: at }, "retired", sealing, at);
}

/** Nothing that the key signed counts any more. */
export function compromiseSigningKey(key: SigningKeyRecord, sealing: Sealing, at: string): DecidedKey {
  return ended(key, { retiredAt: key.retiredAt ?? at, compromisedAt: at }, "compromised", sealing, at);
}

/** The shop does without a key that it cannot open. */
export function loseSigningKey(key: SigningKeyRecord, sealing: Sealing, at: string): DecidedKey {
  return ended(key, { retiredAt: key.retiredAt ?? at, lostAt: at }, "lost", sealing, at);
}

/** The key as it is, with its private half under another seal. */
export function resealSigningKey(key: SigningKeyRecord, d: string, sealing: Sealing, at: string): DecidedKey {
  const record = { ...nextVersion(key, at), seal: sealing.seal(d, statedOf(key)) };
  return { record, changes: [replacement(signingKeyKind, key, record, "resealed")] };
}

/** What the seal of a key covers besides its private half: whoever changes one of these in the database breaks it. */
export function statedOf({ kid, x, createdAt, retiredAt, compromisedAt, lostAt }: SigningKeyRecord): object {
  return {
    ...{ kid, x, createdAt },
    ...(retiredAt !== undefined && { retiredAt }),
    ...(compromisedAt !== undefined && { compromisedAt }),
    ...(lostAt !== undefined && { lostAt }),
  };
}

function created(
  fields: Pick<SigningKeyRecord, "kid" | "x"> & Ends,
  d: string,
  at: string,
  sealing: Sealing,
): DecidedKey {
  const unsealed = newRecord(newId(signingKeyKind.idPrefix), { ...fields, seal: "" }, at);
  const record = { ...unsealed, seal: sealing.seal(d, statedOf(unsealed)) };
  return { record, changes: [creation(signingKeyKind, record)] };
}

function ended(
  key: SigningKeyRecord,
  ends: Ends,
  happening: string,
  sealing: Sealing,
  at: string,
): DecidedKey {
  const unsealed = { ...nextVersion(key, at), ...ends };
  const record = { ...unsealed, seal: sealing.seal("", statedOf(unsealed)) };
  return { record, changes: [replacement(signingKeyKind, key, record, happening)] };
}
