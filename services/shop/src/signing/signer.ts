import type { Change, Expectation } from "../store/port.ts";
import type { Answer } from "../store/store.ts";
import { compromiseSigningKey, createSigningKey, type DecidedKey, retireSigningKey } from "./decide.ts";
import { newKeyPair, privateKeyOf, signedWith } from "./key-pair.ts";
import { signingKeyKind } from "./kind.ts";
import {
  type KnownKey,
  openKeys,
  type PublicKey,
  publicKeysOf,
  type Verification,
  verifyWith,
} from "./known-keys.ts";
import { signingKeys } from "./reads.ts";
import type { Sealing } from "./sealing.ts";

/** The key that signs now. What it signs and is written down must not be written once it is another one. */
export type Signing = {
  readonly kid: string;
  readonly expects: readonly Expectation[];
  /** The payload in canonical JSON as a compact JWS (RFC 7515); `typ` names the kind of statement. */
  readonly sign: (payload: object, typ: string) => Promise<string>;
};

/** A decided change of the keys: what is to be written, and what signs and is published once it is. */
export type KeyChange = {
  readonly changes: readonly Change[];
  readonly signing: Signing;
  readonly publicKeys: readonly PublicKey[];
};

/** Signs for the service, and recognises what it signed. The keys are read each time: another process may have changed them. */
export type Signer = {
  readonly signing: () => Promise<Signing>;
  /** Signs what nobody writes down. */
  readonly sign: Signing["sign"];
  /** Checks a compact JWS against the current key and all earlier ones. */
  readonly verify: (jws: string) => Promise<Verification>;
  /** Oldest first; the last one is the current one. */
  readonly publicKeys: () => Promise<readonly PublicKey[]>;
  /** Signs with a new key. The earlier one can still be checked against, and can no longer sign. */
  readonly rotate: (at: string) => Promise<KeyChange>;
  /** Ends everything that a key signed; in place of the current one another signs. Undefined when there is no such key. */
  readonly compromise: (kid: string, at: string) => Promise<KeyChange | undefined>;
};

/** The signer of a shop whose keys are in its database under this seal. */
export function signerOf(answer: Answer, sealing: Sealing): Signer {
  const known = async () => openKeys(await answer(signingKeys.inOrder()), sealing).known;
  const signing = async () => signingOf(await known());
  const publicKeys = async () => publicKeysOf(await known());

  async function replaced(keys: readonly KnownKey[], ended: DecidedKey, at: string): Promise<KeyChange> {
    const pair = await newKeyPair();
    const fresh = createSigningKey(pair, sealing, at);
    const next = [...withEnd(keys, ended), { record: fresh.record, d: pair.d }];
    const { kid, sign } = signingOf(next);
    // The key is not there yet: that the old one still signs is what both changes rest on.
    const signsNext: Signing = { kid, sign, expects: [] };
    return {
      changes: [...ended.changes, ...fresh.changes],
      signing: signsNext,
      publicKeys: publicKeysOf(next),
    };
  }

  return {
    signing,
    sign: async (payload, typ) => (await signing()).sign(payload, typ),
    verify: async (jws) => verifyWith(jws, await publicKeys()),
    publicKeys,
    rotate: async (at) => {
      const keys = await known();
      return replaced(keys, retireSigningKey(currentOf(keys).record, sealing, at), at);
    },
    compromise: async (wanted, at) => {
      const keys = await known();
      const key = keys.find(({ record: { kid, lostAt } }) => kid === wanted && lostAt === undefined);
      if (key === undefined) return undefined;
      if (key.record.compromisedAt !== undefined)
        return { changes: [], signing: signingOf(keys), publicKeys: publicKeysOf(keys) };
      const ended = compromiseSigningKey(key.record, sealing, at);
      if (key.record.retiredAt === undefined) return replaced(keys, ended, at);
      const publicNow = publicKeysOf(withEnd(keys, ended));
      return { changes: ended.changes, signing: signingOf(keys), publicKeys: publicNow };
    },
  };
}

function withEnd(keys: readonly KnownKey[], { record }: DecidedKey): KnownKey[] {
  return keys.map((key) => (key.record.id === record.id ? { record, d: "" } : key));
}

function signingOf(keys: readonly KnownKey[]): Signing {
  const { record, d } = currentOf(keys);
  const { id, version, kid, x } = record;
  return {
    kid,
    expects: [{ kind: signingKeyKind, id, version }],
    sign: async (payload, typ) => signedWith(await privateKeyOf({ x, d }), payload, { kid, typ }),
  };
}

function currentOf(keys: readonly KnownKey[]): KnownKey {
  const current = keys.at(-1);
  if (current === undefined || current.record.retiredAt !== undefined) {
    throw new Error("the key that signs now was sealed with another sealing key than this process has");
  }
  return current;
}
