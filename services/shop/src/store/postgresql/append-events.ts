import type { PoolClient } from "pg";
import { type Head, nextEvent } from "../next-event.ts";
import type { Change, Stamp } from "../port.ts";
import { recordDigest } from "../record-digest.ts";
import type { Write } from "./table-writer.ts";

type Event = ReturnType<typeof nextEvent>;

/** A change whose event waits to be appended, and how its record was written last. */
export type PendingEvent = {
  readonly change: Change;
  readonly stamp: Stamp;
  readonly write: Write | undefined;
};

/** The end of the chain. */
export const LATEST = {
  name: "latest_event",
  text: `SELECT sequence, hash, latest_at AS "latestAt" FROM events ORDER BY sequence DESC LIMIT 1`,
};

/** The columns of an event with their types: a set of events is one statement. */
const COLUMNS: readonly (readonly [name: string, type: string, of: (event: Event) => unknown])[] = [
  ["sequence", "bigint", (event) => event.sequence],
  ["at", "text", (event) => event.at],
  ["by", "text", (event) => event.by],
  ["request_id", "text", (event) => event.requestId],
  ["type", "text", (event) => event.type],
  ["subject_id", "text", (event) => event.subjectId],
  ["subject_version", "bigint", (event) => event.subjectVersion],
  ["data", "json", (event) => JSON.stringify(event.data)],
  ["previous_hash", "text", (event) => event.previousHash],
  ["why", "text", (event) => event.why ?? null],
  ["hash", "text", (event) => event.hash],
  ["latest_at", "text", (event) => event.latestAt],
  ["record_digest", "text", (event) => event.recordDigest ?? null],
];

const NAMES = COLUMNS.map(([name]) => name).join(", ");
const ARRAYS = COLUMNS.map(([, type], index) => `$${index + 1}::${type}[]`).join(", ");
const INSERT = `INSERT INTO events (${NAMES}) SELECT * FROM unnest(${ARRAYS})`;

/** The events as they follow a head, with what is kept of their records by now. */
export function chained(pending: readonly PendingEvent[], after: Head): Event[] {
  let head = after;
  return pending.map(({ change, stamp, write }) => {
    const kept = change.action === "remove" ? undefined : write?.kept;
    const event = nextEvent(change, stamp, head, kept && recordDigest(change.kind, kept));
    head = event;
    return event;
  });
}

/** Appends events to the chain. */
export async function insertEvents(client: PoolClient, chain: readonly Event[]): Promise<void> {
  await client.query({
    name: "insert_events",
    text: INSERT,
    values: COLUMNS.map(([, , of]) => chain.map(of)),
  });
}
