import { events } from "../events/reads.ts";
import { type Signer, signingKeyIdOf } from "../signing/signer.ts";
import { creation, newRecord } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Answer } from "../store/store.ts";
import { checkpointKind } from "./kind.ts";
import { type CheckpointCause, type CheckpointRecord, STATEMENT_TYPE, type Statement } from "./schema.ts";

/** Makes the next checkpoint: signed, not yet committed. */
export type MakeCheckpoint = (
  cause: CheckpointCause,
  at: string,
) => Promise<ReturnType<typeof checkpointCreation>>;

/** States what the latest event is and what its hash, and has it signed. */
export function checkpointMaker(answer: Answer, signer: Pick<Signer, "sign">): MakeCheckpoint {
  return async (cause, at) => {
    const latest = await answer(events.latest());
    // Who asks has a key, and making it was an event.
    if (latest === undefined) throw new Error("a history without events says nothing that could be signed");
    const statement: Statement = { ...latest, at };
    return checkpointCreation(cause, statement, await signer.sign(statement, STATEMENT_TYPE));
  };
}

function checkpointCreation(cause: CheckpointCause, { sequence, hash, at }: Statement, statement: string) {
  const fields = { sequence, hash, cause, signingKeyId: signingKeyIdOf(statement), statement };
  const record: CheckpointRecord = newRecord(newId(checkpointKind.idPrefix), fields, at);
  return { record, changes: [creation(checkpointKind, record)] };
}
