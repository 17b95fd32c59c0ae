import { desc, type getTableColumns, sql } from "drizzle-orm";
import { eventHash, FIRST_PREVIOUS_HASH, laterOf } from "../events/chain.ts";
import type { Database } from "./database.ts";
import type { Change, Stamp } from "./port.ts";
import { events } from "./tables/history.ts";

/** Appends the event of a change to the chain. Call inside the transaction that makes the change. */
export function eventAppender(database: Database): (change: Change, stamp: Stamp) => void {
  const placeholders = {
    sequence: sql.placeholder("sequence"),
    at: sql.placeholder("at"),
    by: sql.placeholder("by"),
    requestId: sql.placeholder("requestId"),
    type: sql.placeholder("type"),
    subjectId: sql.placeholder("subjectId"),
    subjectVersion: sql.placeholder("subjectVersion"),
    data: sql.placeholder("data"),
    previousHash: sql.placeholder("previousHash"),
    hash: sql.placeholder("hash"),
    why: sql.placeholder("why"),
    latestAt: sql.placeholder("latestAt"),
  } satisfies Record<keyof ReturnType<typeof getTableColumns<typeof events>>, unknown>;
  const insert = database.insert(events).values(placeholders).prepare();
  const latest = database
    .select({ sequence: events.sequence, hash: events.hash, latestAt: events.latestAt })
    .from(events)
    .orderBy(desc(events.sequence))
    .limit(1)
    .prepare();
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
    insert.run({ ...content, why: why ?? null, hash: eventHash(content), latestAt });
  };
}
