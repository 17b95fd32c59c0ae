import { events } from "../events/reads.ts";
import type { Kind } from "../store/kind.ts";
import type { Question } from "../store/query.ts";
import { recordProofs } from "./reads.ts";
import type { BreakReason } from "./schema.ts";

const IS_REMOVAL = /\.removed$/;

/** Looks at records beside their events. */
export type RecordProof = ReturnType<typeof recordProof>;

/** How records of these kinds are held against the history. */
export function recordProof(kinds: readonly Kind[]) {
  const kindOf = new Map(kinds.map((kind) => [kind.type, { kind, ...recordProofs(kind) }]));

  /** What is wrong with the record of an event, by the latest event there is of it. Asked as one question, so that no write comes between. */
  function* breakOf(subjectId: string): Question<BreakReason | undefined> {
    const last = yield* events.lastOf(subjectId);
    const found = last && kindOf.get(last.type.split(".", 1)[0] ?? "");
    if (last === undefined || found === undefined) return undefined;
    const record = yield* found.kept(subjectId);
    if (IS_REMOVAL.test(last.type)) return record === undefined ? undefined : "record-planted";
    if (record === undefined) return "record-missing";
    const isSame = last.recordDigest === null || last.recordDigest === record.digest;
    return isSame && record.version === last.subjectVersion ? undefined : "record-changed";
  }

  /** The ids of the next records of a kind, and those of them of which no event tells. */
  function* planted(kind: Kind, afterId: string) {
    const of = kindOf.get(kind.type);
    return of === undefined ? [] : yield* of.withTheirEvents(afterId);
  }

  return { kinds, breakOf, planted };
}
