import type { Kept, Kind, RecordOf } from "./kind.ts";
import type { Question } from "./query.ts";

/** Who changes something, when, and in which request. */
export type Stamp = {
  /** Id of the caller's key, or `system`. */
  readonly by: string;
  /** RFC 3339, UTC. */
  readonly at: string;
  readonly requestId: string;
  /** What the caller gave as the reason. */
  readonly why?: string;
};

/** What happened, in words for programs and people. Never holds a secret. */
export type EventDraft = { readonly type: string; readonly data: Readonly<Record<string, unknown>> };

export type Create<K extends Kind> = {
  readonly action: "create";
  readonly kind: K;
  readonly record: RecordOf<K>;
  /** The values of its query columns, when they have been computed beforehand. */
  readonly queryColumns?: object;
  readonly event: EventDraft;
};

export type Replace<K extends Kind> = {
  readonly action: "replace";
  readonly kind: K;
  readonly record: RecordOf<K>;
  /** The fields that differ, when that is known: then only those are written. */
  readonly changed?: readonly string[];
  readonly queryColumns?: object;
  readonly expectedVersion: number;
  readonly event: EventDraft;
};

/** Some fields of a record that was not read whole. Not for kinds with query columns: those need all of it. */
export type Amend<K extends Kind> = {
  readonly action: "amend";
  readonly kind: K;
  readonly id: string;
  readonly fields: Pick<Kept, "version" | "updatedAt"> & Partial<RecordOf<K>>;
  readonly expectedVersion: number;
  readonly event: EventDraft;
};

export type Remove<K extends Kind> = {
  readonly action: "remove";
  readonly kind: K;
  readonly id: string;
  readonly expectedVersion: number;
  readonly event: EventDraft;
};

/** One change with the event that explains it. */
export type Change<K extends Kind = Kind> = Create<K> | Replace<K> | Amend<K> | Remove<K>;

/** A record that is not changed but must still be at this version, or not be there at all, because the decision rests on it. */
export type Expectation = { readonly kind: Kind; readonly id: string; readonly version: number | undefined };

/** The answer to a request, kept so that the same request again gets the same answer. */
export type KeptAnswer = {
  /** Caller, method and path. */
  readonly scope: string;
  readonly idempotencyKey: string;
  /** SHA-256 of the canonical request body. */
  readonly fingerprint: string;
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
  readonly expiresAt: string;
};

/** Everything that one request writes: all of it, or nothing. */
export type WriteBatch = {
  readonly stamp: Stamp;
  readonly changes: readonly Change[];
  /** More changes than memory should hold: after the others, one by one as the transaction takes them. */
  readonly streamed?: Iterable<Change>;
  readonly expects?: readonly Expectation[];
  readonly answer?: KeptAnswer;
};

export type CommitResult =
  | { readonly kind: "committed" }
  /** A record has moved on to another version since it was read. */
  | { readonly kind: "stale"; readonly noun: string; readonly id: string; readonly version: number }
  /** A record has been removed since it was read. */
  | { readonly kind: "gone"; readonly noun: string; readonly id: string }
  /** What the changes were decided on is not so any more. */
  | { readonly kind: "conflict"; readonly noun: string; readonly id: string }
  /** The same request was committed a moment ago by another one. */
  | { readonly kind: "answered" };

/** The one door for writes. Resolves once the result is on the disk. */
export type Commit = (batch: WriteBatch) => Promise<CommitResult>;

/**
 * What is asked inside a transaction, after changes were applied: what must still hold, and which changes follow from these.
 * Throws ConflictError when the changes rest on something that is not so any more.
 */
export type InTransactionRule = (changes: readonly Change[], stamp: Stamp) => Question<readonly Change[]>;

/** Leaves a write batch whose decision no longer fits what is kept: it must be decided again. */
export class ConflictError extends Error {
  readonly noun: string;
  readonly id: string;

  constructor({ noun }: Kind, id: string) {
    super(`${noun} ${id} is not as it was when this was decided`);
    this.noun = noun;
    this.id = id;
  }
}
