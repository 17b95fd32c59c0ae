import type { Database as Sqlite } from "better-sqlite3";
import { FIRST_PREVIOUS_HASH } from "../chain.ts";
import { subjectOf } from "../changes.ts";
import { type Head, nextEvent } from "../next-event.ts";
import type { Change, Stamp } from "../port.ts";
import type { Pieces } from "./pieces.ts";
import type { Writers } from "./writers.ts";

/** Appends the events of changes to the chain. Call inside the transaction that makes the changes. */
export function eventAppender(
  sqlite: Sqlite,
  writers: Writers,
): (changes: readonly Change[], stamp: Stamp) => Pieces {
  const insert = sqlite.prepare(
    `INSERT INTO events (sequence, at, by, request_id, type, subject_id, subject_version, data, previous_hash, why, hash, latest_at, record_digest)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const latest = sqlite.prepare<[], Head>(
    "SELECT sequence, hash, latest_at AS latestAt FROM events ORDER BY sequence DESC LIMIT 1",
  );

  function append(change: Change, stamp: Stamp, head: Head): Head {
    const digest = change.action === "remove" ? undefined : writers(change.kind).digest(subjectOf(change));
    const event = nextEvent(change, stamp, head, digest);
    insert.run([
      event.sequence,
      event.at,
      event.by,
      event.requestId,
      event.type,
      event.subjectId,
      event.subjectVersion,
      JSON.stringify(event.data),
      event.previousHash,
      event.why ?? null,
      event.hash,
      event.latestAt,
      event.recordDigest ?? null,
    ]);
    return event;
  }

  return function* (changes, stamp) {
    if (changes.length === 0) return;
    let last = latest.get() ?? { sequence: 0, hash: FIRST_PREVIOUS_HASH, latestAt: stamp.at };
    for (const change of changes) {
      last = append(change, stamp, last);
      yield;
    }
  };
}
