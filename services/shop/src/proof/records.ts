import { events } from "../events/reads.ts";
import type { Kind } from "../store/kind.ts";
import type { Question } from "../store/query.ts";
import { recordProofs } from "./reads.ts";
import type { BreakReason } from "./schema.ts";

/** Sorts after every time there is. */
const AFTER_EVERY_TIME = "~";

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
    // Events from before there were digests state no more than the version of a record that is there.
    if (record === undefined) return last.recordDigest === null ? undefined : "record-missing";
    const isSame = last.recordDigest === null || last.recordDigest === record.digest;
    return isSame && record.version === last.subjectVersion ? undefined : "record-changed";
  }

  /** The ids of the next records of a kind, and those of them of which no event tells. */
  function* planted(kind: Kind, afterId: string) {
    const of = kindOf.get(kind.type);
    if (of === undefined) return [];
    return yield* of.withTheirEvents(afterId, yield* eventsSince());
  }

  return { kinds, breakOf, planted };
}

/** From when on every record has its event. A shop that is older than the digests may hold what was entered without one. */
function* eventsSince(): Question<string> {
  const first = yield* events.firstWithDigest();
  if (first === undefined) return AFTER_EVERY_TIME;
  return first.sequence === 1 ? "" : first.at;
}
