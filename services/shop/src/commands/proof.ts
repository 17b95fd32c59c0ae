import { keptCheckpoint } from "../checkpoints/kept.ts";
import { proveWithKept } from "../proof/prove.ts";
import { recordProof } from "../proof/records.ts";
import { BREAKS, type Head, type Proof } from "../proof/schema.ts";
import { KINDS } from "../rooms/kinds.ts";
import { verifyWith } from "../signing/known-keys.ts";
import type { KeySettings } from "../signing/start.ts";
import { knownPublicKeys } from "../signing/verifier.ts";
import type { Store } from "../store/store.ts";
import { type Asked, CommandError } from "./command.ts";

/** Where what opens the signing keys is. */
export type KeyPlaces = Pick<KeySettings, "signingKeys" | "sealingKey">;

/** An event as it is written in one word: its sequence, a colon, and its hash. */
const HEAD = /^([1-9]\d{0,15}):([0-9a-f]{64})$/;

/** The event that `--head` names, if it is given. */
export function headAsked({ values }: Asked): Head | undefined {
  const text = values.get("head");
  if (text === undefined) return undefined;
  const [, sequence, hash] = HEAD.exec(text) ?? [];
  if (sequence === undefined || hash === undefined) {
    throw new CommandError("--head takes a sequence, a colon and a hash, as in 680:9f2c….");
  }
  return { sequence: Number(sequence), hash };
}

/** Follows a whole history from its first event on. Throws a CommandError that says where it is broken. */
export async function proveWhole(
  { answer }: Store,
  settings: KeyPlaces,
  head: Head | undefined,
): Promise<Proof> {
  const keys = await knownPublicKeys(answer, settings);
  const verify = (jws: string) => verifyWith(jws, keys);
  const kept = () => keptCheckpoint(settings.signingKeys, verify);
  const sources = { answer, verify, records: recordProof(KINDS), kept };
  const most = Number.MAX_SAFE_INTEGER - 1;
  const proof = await proveWithKept(1, most, head, sources);
  if (proof.broken === undefined) return proof;
  const { sequence, reason } = proof.broken;
  const meaning = Object.entries(BREAKS).find(([each]) => each === reason)?.[1] ?? reason;
  throw new CommandError(
    `The history is not intact at event ${sequence}: ${meaning}. Good up to event ${proof.lastSequence}.`,
  );
}
