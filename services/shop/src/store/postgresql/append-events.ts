import type { PoolClient } from "pg";
import { FIRST_PREVIOUS_HASH } from "../chain.ts";
import { subjectOf } from "../changes.ts";
import { type Head, nextEvent } from "../next-event.ts";
import type { Change, Stamp } from "../port.ts";
import type { RawRow } from "../readers.ts";
import { recordDigest } from "../record-digest.ts";

type Event = ReturnType<typeof nextEvent>;

const LATEST = `SELECT sequence, hash, latest_at AS "latestAt" FROM events ORDER BY sequence DESC LIMIT 1`;

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

/** Appends the events of changes to the chain, with the rows that are kept of their records by now. Inside their transaction. Gives the end of the chain then. */
export async function appendEvents(
  client: PoolClient,
  changes: readonly Change[],
  stamp: Stamp,
  kept: ReadonlyMap<string, RawRow>,
): Promise<Head | undefined> {
  if (changes.length === 0) return undefined;
  const latest = (await client.query<Head>(LATEST)).rows[0];
  let head: Head = latest ?? { sequence: 0, hash: FIRST_PREVIOUS_HASH, latestAt: stamp.at };
  const events: Event[] = [];
  for (const change of changes) {
    const row = change.action === "remove" ? undefined : kept.get(subjectOf(change));
    const event = nextEvent(change, stamp, head, row && recordDigest(change.kind, row));
    events.push(event);
    head = event;
  }
  await client.query({
    name: "append_events",
    text: INSERT,
    values: COLUMNS.map(([, , of]) => events.map(of)),
  });
  return head;
}
