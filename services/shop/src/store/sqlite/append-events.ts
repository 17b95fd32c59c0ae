import type { Database as Sqlite } from "better-sqlite3";
import { eventHash, FIRST_PREVIOUS_HASH, laterOf } from "../chain.ts";
import { subjectOf } from "../changes.ts";
import type { Change, Stamp } from "../port.ts";
import type { Pieces } from "./pieces.ts";
import type { Writers } from "./writers.ts";

type Last = { readonly sequence: number; readonly hash: string; readonly latestAt: string };

/** Appends the events of changes to the chain. Call inside the transaction that makes the changes. */
export function eventAppender(
  sqlite: Sqlite,
  writers: Writers,
): (changes: readonly Change[], stamp: Stamp) => Pieces {
  const insert = sqlite.prepare(
    `INSERT INTO events (sequence, at, by, request_id, type, subject_id, subject_version, data, previous_hash, why, hash, latest_at, record_digest)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const latest = sqlite.prepare<[], Last>(
    "SELECT sequence, hash, latest_at AS latestAt FROM events ORDER BY sequence DESC LIMIT 1",
  );

  function append(change: Change, { at, by, requestId, why }: Stamp, last: Last): Last {
    const { type, data } = change.event;
    const { hash: previousHash } = last;
    const sequence = last.sequence + 1;
    const subjectId = subjectOf(change);
    const subjectVersion = versionAfter(change);
    const content = { sequence, at, by, requestId, type, subjectId, subjectVersion, data, previousHash };
    const recordDigest = change.action === "remove" ? undefined : writers(change.kind).digest(subjectId);
    const hash = eventHash({
      ...content,
      ...(why !== undefined && { why }),
      ...(recordDigest !== undefined && { recordDigest }),
    });
    const latestAt = laterOf(at, last.latestAt);
    insert.run([
      sequence,
      at,
      by,
      requestId,
      type,
      subjectId,
      subjectVersion,
      JSON.stringify(data),
      previousHash,
      why ?? null,
      hash,
      latestAt,
      recordDigest ?? null,
    ]);
    return { sequence, hash, latestAt };
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

function versionAfter(change: Change): number {
  switch (change.action) {
    case "create":
    case "replace":
      return change.record.version;
    case "amend":
      return change.fields.version;
    case "remove":
      return change.expectedVersion;
  }
}
