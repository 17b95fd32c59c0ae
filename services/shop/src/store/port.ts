import type { Kept, Records, RecordType } from "./records.ts";

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

type Create<Type extends RecordType> = {
  readonly action: "create";
  readonly type: Type;
  readonly record: Records[Type];
  /** What only its queries need, where it has been made beforehand. */
  readonly queryColumns?: object;
  readonly event: EventDraft;
};

type Replace<Type extends RecordType> = {
  readonly action: "replace";
  readonly type: Type;
  readonly record: Records[Type];
  /** The fields that differ, where that is known: then only those are written. */
  readonly changed?: readonly string[];
  readonly queryColumns?: object;
  readonly expectedVersion: number;
  readonly event: EventDraft;
};

/** Some fields of a record that was not read whole. A bit's words and figures for its queries need all of it. */
type Amend<Type extends Exclude<RecordType, "bit">> = {
  readonly action: "amend";
  readonly type: Type;
  readonly id: string;
  readonly fields: Pick<Kept, "version" | "updatedAt"> & Partial<Records[Type]>;
  readonly expectedVersion: number;
  readonly event: EventDraft;
};

type Remove<Type extends RecordType> = {
  readonly action: "remove";
  readonly type: Type;
  readonly id: string;
  readonly expectedVersion: number;
  readonly event: EventDraft;
};

/** One change with the event that explains it. */
export type Change =
  | { [Type in RecordType]: Create<Type> | Replace<Type> | Remove<Type> }[RecordType]
  | { [Type in Exclude<RecordType, "bit">]: Amend<Type> }[Exclude<RecordType, "bit">];

/** A record that is not changed but must still be at this version, because the decision rests on it. */
export type Expectation = { readonly type: RecordType; readonly id: string; readonly version: number };

/** The answer to a creating request, kept so that the same request again gets the same answer. */
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

/** Everything that one request changes: all of it is written, or none. */
export type Order = {
  readonly stamp: Stamp;
  readonly changes: readonly Change[];
  /** More changes than memory should hold: after the others, one by one as the transaction takes them. */
  readonly streamed?: Iterable<Change>;
  readonly expects?: readonly Expectation[];
  readonly answer?: KeptAnswer;
};

export type Outcome =
  | { readonly kind: "committed" }
  /** A record has moved on to another version since it was read. */
  | { readonly kind: "stale"; readonly type: RecordType; readonly id: string; readonly version: number }
  /** A record has been removed since it was read. */
  | { readonly kind: "gone"; readonly type: RecordType; readonly id: string }
  /** What a record was decided on is not so any more. */
  | { readonly kind: "moved"; readonly type: RecordType; readonly id: string }
  /** The same creating request was committed a moment ago by another one. */
  | { readonly kind: "answered" };

/** The one door for writes. Resolves once the outcome is on the disk. */
export type Commit = (order: Order) => Promise<Outcome>;
