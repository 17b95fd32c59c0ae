import type { PoolClient } from "pg";
import { FIRST_PREVIOUS_HASH } from "../chain.ts";
import type { Kind } from "../kind.ts";
import type { Head } from "../next-event.ts";
import type { Change, KeptAnswer, Stamp } from "../port.ts";
import type { Question } from "../query.ts";
import { RefusedError } from "../refusal.ts";
import type { Step } from "../store.ts";
import { type AnswerAt, answerKey, insertAnswers, keptAmong } from "./answers.ts";
import { chained, insertEvents, LATEST, type PendingEvent } from "./append-events.ts";
import { askingOn } from "./asking.ts";
import { inOrder } from "./in-order.ts";
import { pendingWrites } from "./pending-writes.ts";
import type { TableWriters, Write } from "./table-writer.ts";

/** Rows that wait before they are written: enough that a set is worth it, few enough that memory holds them. */
const MOST_WAITING = 100;
/** Versions that memory holds; what is known no longer is looked up again. */
const MOST_KNOWN = 2000;

/** A record that something rests on, by its kind and id. */
export type Named = { readonly kind: Kind; readonly id: string };

/** Which fields an update writes, unless it is all, and the version that the record has then, unless it is the same. */
export type Update = {
  readonly changed?: readonly string[] | undefined;
  readonly version?: number;
};

/**
 * What a transaction writes, in sets: rows, events and kept answers wait until a question needs them or there are many. Whoever asks
 * sees everything that was written before.
 */
export type Writing = {
  readonly ask: <Result>(question: Question<Result>) => Promise<Result>;
  /** Looks up what it does not know yet of these records and answers, all in one turn. */
  readonly lookUp: (records: readonly Named[], answers?: readonly AnswerAt[]) => Promise<void>;
  /** The version of a record; undefined when it is not there. */
  readonly version: (record: Named) => Promise<number | undefined>;
  /** Throws a RefusedError when the answer is kept already. */
  readonly keepAnswer: (answer: AnswerAt) => Promise<void>;
  readonly insert: (kind: Kind, id: string, row: object, version: number) => Write;
  readonly update: (kind: Kind, id: string, row: object, update?: Update) => Write;
  readonly remove: (kind: Kind, id: string) => void;
  /** Appends the event of a change; its record is what was written of it last. */
  readonly append: (change: Change, stamp: Stamp, write: Write | undefined) => void;
  /** Has what waits written when it is much. */
  readonly relieve: () => Promise<void>;
  readonly settle: () => Promise<void>;
  /** The same without waiting for the last statements. */
  readonly send: () => Promise<readonly Promise<unknown>[]>;
  /** The chain's end as it is now. */
  readonly head: () => Head | undefined;
  /** What all of it comes to; undefined when nothing happened. */
  readonly step: () => Step | undefined;
  /** The last answer that is kept. */
  readonly latestAnswer: () => KeptAnswer | undefined;
  /** Goes back to a head, and forgets everything else: what was written since is gone. */
  readonly goBack: (head: Head | undefined) => void;
};

/** Writes nothing before the transaction has `begun`. */
export function writingOn(client: PoolClient, writers: TableWriters, begun: Promise<unknown>): Writing {
  const rows = pendingWrites();
  const versions = new Map<string, number | undefined>();
  const areKept = new Map<string, boolean>();
  let events: PendingEvent[] = [];
  let answers: AnswerAt[] = [];
  let head: Head | undefined;
  let from: string | undefined;
  const types = new Set<string>();
  let latestAnswer: KeptAnswer | undefined;
  const asking = askingOn(client, waitingFor, settle);

  function* waitingFor(): Iterable<string> {
    yield* rows.tables();
    if (events.length > 0) yield "events";
    if (answers.length > 0) yield "answers";
  }

  async function send(): Promise<readonly Promise<unknown>[]> {
    await begun;
    asking.forget(new Set(waitingFor()));
    const [toAppend, toKeep] = [events, answers];
    events = [];
    answers = [];
    const sent = [...rows.send(client), ...(toKeep.length === 0 ? [] : [insertAnswers(client, toKeep)])];
    if (toAppend.length === 0) return sent;
    const latest = head === undefined ? client.query<Head>(LATEST) : undefined;
    await inOrder([...sent, latest]);
    const before = head ??
      (await latest)?.rows[0] ?? { sequence: 0, hash: FIRST_PREVIOUS_HASH, latestAt: "" };
    from ??= before.hash;
    const chain = chained(toAppend, before);
    head = chain.at(-1);
    return [insertEvents(client, chain)];
  }

  async function settle(): Promise<void> {
    await inOrder(await send());
  }

  async function lookUp(records: readonly Named[], given: readonly AnswerAt[] = []): Promise<void> {
    const unknown = new Map<Kind, Set<string>>();
    for (const { kind, id } of records) {
      if (versions.has(keyOf(kind, id))) continue;
      versions.set(keyOf(kind, id), undefined);
      unknown.set(kind, (unknown.get(kind) ?? new Set()).add(id));
    }
    const asked = [...unknown].map(async ([kind, ids]) => {
      const found = await client.query<{ id: string; version: number }>({
        ...writers(kind).versions,
        values: [[...ids]],
      });
      for (const { id, version } of found.rows) versions.set(keyOf(kind, id), version);
    });
    const newAnswers = given.filter((answer) => !areKept.has(answerKey(answer)));
    for (const answer of newAnswers) areKept.set(answerKey(answer), false);
    const [there] = await inOrder<[string[], ...unknown[]]>([keptAmong(client, newAnswers), ...asked]);
    for (const key of there) areKept.set(key, true);
  }

  return {
    ask: asking.ask,
    lookUp,
    version: async (record) => {
      await lookUp([record]);
      return versions.get(keyOf(record.kind, record.id));
    },
    keepAnswer: async (answer) => {
      await lookUp([], [answer]);
      if (areKept.get(answerKey(answer))) throw new RefusedError({ kind: "answered" });
      areKept.set(answerKey(answer), true);
      answers.push(answer);
      latestAnswer = answer[0];
    },
    insert: (kind, id, row, version) => {
      const { insert } = writers(kind);
      versions.set(keyOf(kind, id), version);
      return rows.add(writers(kind), insert, id, row);
    },
    update: (kind, id, row, { changed, version } = {}) => {
      if (version !== undefined) versions.set(keyOf(kind, id), version);
      return rows.add(writers(kind), writers(kind).update(changed), id, row);
    },
    remove: (kind, id) => {
      versions.set(keyOf(kind, id), undefined);
      rows.add(writers(kind), writers(kind).remove, id, {});
    },
    append: (change, stamp, write) => {
      types.add(change.kind.type);
      events.push({ change, stamp, write });
    },
    relieve: async () => {
      if (rows.count() + events.length < MOST_WAITING) return;
      await settle();
      if (versions.size > MOST_KNOWN) versions.clear();
    },
    settle,
    send,
    head: () => head,
    step: () => (from === undefined || head === undefined ? undefined : { from, to: head.hash, types }),
    latestAnswer: () => latestAnswer,
    goBack: (to) => {
      rows.forget();
      events = [];
      answers = [];
      versions.clear();
      areKept.clear();
      asking.forgetAll();
      head = to;
      latestAnswer = undefined;
    },
  };
}

function keyOf({ type }: Kind, id: string): string {
  return `${type} ${id}`;
}
