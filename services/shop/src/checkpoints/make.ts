import { events } from "../events/reads.ts";
import type { Signer, Signing } from "../signing/signer.ts";
import { creation, type Decision, newRecord } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Answer } from "../store/store.ts";
import { checkpointKind } from "./kind.ts";
import { type CheckpointCause, type CheckpointRecord, STATEMENT_TYPE, type Statement } from "./schema.ts";

/** Makes the next checkpoint: signed, not yet committed. Default: with the key that signs now, which it must still do when it is committed. */
export type MakeCheckpoint = (
  cause: CheckpointCause,
  at: string,
  signing?: Signing,
) => Promise<Decision<CheckpointRecord>>;

/** States what the latest event is and what its hash, and has it signed. */
export function checkpointMaker(answer: Answer, signer: Pick<Signer, "signing">): MakeCheckpoint {
  return async (cause, at, given) => {
    const latest = await answer(events.latest());
    // Who asks has a key, and making it was an event.
    if (latest === undefined) throw new Error("a history without events says nothing that could be signed");
    const statement: Statement = { ...latest, at };
    const signing = given ?? (await signer.signing());
    const signed = await signing.sign(statement, STATEMENT_TYPE);
    return { ...checkpointCreation(cause, statement, signed, signing.kid), expects: signing.expects };
  };
}

function checkpointCreation(
  cause: CheckpointCause,
  { sequence, hash, at }: Statement,
  statement: string,
  signingKeyId: string,
): Decision<CheckpointRecord> {
  const fields = { sequence, hash, cause, signingKeyId, statement };
  const record: CheckpointRecord = newRecord(newId(checkpointKind.idPrefix), fields, at);
  return { record, changes: [creation(checkpointKind, record)] };
}
