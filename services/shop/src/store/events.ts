import type { Database as Sqlite } from "better-sqlite3";
import { eventHash, FIRST_PREVIOUS_HASH, laterOf } from "../events/chain.ts";
import type { Change, Stamp } from "./port.ts";

type Last = { readonly sequence: number; readonly hash: string; readonly latestAt: string };

/** Appends the event of a change to the chain. Call inside the transaction that makes the change. */
export function eventAppender(sqlite: Sqlite): (change: Change, stamp: Stamp) => void {
  const insert = sqlite.prepare(
    `INSERT INTO events (sequence, at, by, request_id, type, subject_id, subject_version, data, previous_hash, why, hash, latest_at)
     VALUES (@sequence, @at, @by, @requestId, @type, @subjectId, @subjectVersion, @data, @previousHash, @why, @hash, @latestAt)`,
  );
  const latest = sqlite.prepare<[], Last>(
    "SELECT sequence, hash, latest_at AS latestAt FROM events ORDER BY sequence DESC LIMIT 1",
  );
  return (change, { at, by, requestId, why }) => {
    const last = latest.get() ?? { sequence: 0, hash: FIRST_PREVIOUS_HASH, latestAt: at };
    const content = {
      sequence: last.sequence + 1,
      at,
      by,
      requestId,
      type: change.event.type,
      subjectId: change.action === "remove" ? change.id : change.record.id,
      subjectVersion: change.action === "remove" ? change.expectedVersion : change.record.version,
      data: change.event.data,
      previousHash: last.hash,
      ...(why !== undefined && { why }),
    };
    const latestAt = laterOf(at, last.latestAt);
    const kept = { data: JSON.stringify(content.data), why: why ?? null, hash: eventHash(content), latestAt };
    insert.run({ ...content, ...kept });
  };
}
