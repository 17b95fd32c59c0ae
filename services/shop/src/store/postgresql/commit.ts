import type { Pool } from "pg";
import { subjectOf } from "../changes.ts";
import { grouped, type Settled } from "../group.ts";
import { type Commit, type CommitResult, ConflictError, type WriteBatch } from "../port.ts";
import { RefusedError } from "../refusal.ts";
import type { Step } from "../store.ts";
import { UnavailableError } from "../unavailable-error.ts";
import { applyBatch, lookUpAll, type Parts } from "./apply.ts";
import { inPart } from "./transaction.ts";
import { whileWriting } from "./while-writing.ts";

const COMMITTED: Settled<CommitResult> = { value: { kind: "committed" } };

/** Classes of SQLSTATE (PostgreSQL's manual, appendix A) that are about one batch: its data, and constraints. */
const OF_A_BATCH = /^2[23]/;
const UNIQUE_VIOLATION = "23505";

/**
 * The one door for writes. Batches that wait together share a transaction, are written in sets, and are acknowledged after the server
 * has flushed its COMMIT. When one of the batches is refused, nothing of the transaction stays and all are applied again, now with a savepoint
 * each. What a batch streams can be taken once only, so it never goes without.
 */
export function openCommit(pool: Pool, parts: Parts, heard: (step: Step) => void): Commit {
  const settleEach = (batches: readonly WriteBatch[]) =>
    whileWriting(
      pool,
      parts.writers,
      async (writing, client) => {
        const results: Settled<CommitResult>[] = [];
        for (const batch of batches) {
          try {
            await inPart(client, writing, () => applyBatch(writing, batch, parts));
            results.push(COMMITTED);
          } catch (error) {
            results.push(refusedBy(error, batch));
          }
        }
        return results;
      },
      heard,
    );
  return grouped(async (batches) => {
    const [alone] = batches;
    try {
      if (batches.length > 1 && batches.some(({ streamed }) => streamed !== undefined))
        return await settleEach(batches);
      await whileWriting(
        pool,
        parts.writers,
        async (writing) => {
          await lookUpAll(writing, batches);
          for (const batch of batches) {
            await applyBatch(writing, batch, parts);
            await writing.relieve();
          }
        },
        heard,
      );
      return batches.map(() => COMMITTED);
    } catch (error) {
      if (batches.length === 1 && alone !== undefined) return [refusedBy(error, alone)];
      if (isOfTheServer(error)) throw error;
      return settleEach(batches);
    }
  });
}

/** How a batch was refused that threw this. Throws what ended the whole transaction. */
function refusedBy(error: unknown, { changes: [first] }: WriteBatch): Settled<CommitResult> {
  if (error instanceof RefusedError) return { value: error.result };
  if (error instanceof ConflictError) return { value: { kind: "conflict", noun: error.noun, id: error.id } };
  // Of two that create at once what may be there once, the later one decides again.
  if (first !== undefined && codeOf(error) === UNIQUE_VIOLATION) {
    return { value: { kind: "conflict", noun: first.kind.noun, id: subjectOf(first) } };
  }
  if (isOfTheServer(error)) throw error;
  return { error };
}

/** A lost connection or a full disk fails every batch: trying each would only take as long again. */
function isOfTheServer(error: unknown): boolean {
  const code = codeOf(error);
  return error instanceof UnavailableError || (code !== "" && !OF_A_BATCH.test(code));
}

function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "";
}
