import type { Answer } from "./answer.ts";
import type { Pages } from "./pages.ts";

/** One call as data: what the generated methods hand to the core. */
export type Operation = {
  readonly method: "GET" | "POST" | "PUT" | "PATCH" | "DELETE";
  /** The path as the API description has it, such as `/v1/bits/{bitId}`. */
  readonly path: string;
  readonly pathParameters?: Readonly<Record<string, string>>;
  readonly query?: Query | undefined;
  readonly body?: unknown;
  /** A body that is sent as it is. */
  readonly data?: FileBody<string>["data"];
  /** Media type of the body if it is not `application/json`. */
  readonly contentType?: string;
  /** Media types of its answer; none if it has no body. Default: `application/json`. */
  readonly answers?: readonly string[];
  /** Set for what writes: it is sent with an Idempotency-Key. */
  readonly isWrite?: true;
};

/** A file to send. A stream is sent once: a call that fails with one is not tried again. */
export type FileBody<Type extends string> = {
  readonly contentType: Type;
  readonly data: string | Blob | ReadableStream<Uint8Array>;
};

export type Query = Readonly<Record<string, QueryValue | readonly QueryValue[] | undefined>>;
type QueryValue = string | number | boolean;

/** What may be said of any one call. */
export type CallOptions = {
  /** Ends the call, between attempts too; the call then rejects with the signal's reason. */
  readonly signal?: AbortSignal;
  /** For one attempt, its body included. */
  readonly timeoutMs?: number;
  /** For the whole call, its waits included. */
  readonly deadlineMs?: number;
  /** Attempts after the first. */
  readonly retries?: number;
  readonly headers?: Readonly<Record<string, string>>;
};

/** What may be said of a call that changes something. */
export type WriteOptions = CallOptions & {
  /** Why: kept with the events of the change. */
  readonly reason?: string;
  /** Made up for each call if none is given. Give one to do it once across restarts of the caller. */
  readonly idempotencyKey?: string;
};

/** The `version` a record was read with, or its ETag. */
export type Version = number | string;

export type ChangeOptions = WriteOptions & {
  /** The change is refused with `PreconditionFailed` when the record has moved on from this. */
  readonly ifMatch: Version;
};

/** Everything the core understands; each method takes the part that means something to it. */
export type AnyOptions = WriteOptions & Partial<ChangeOptions>;

/** What the generated methods are built on. */
export type Caller = {
  readonly send: <Result>(operation: Operation, options?: AnyOptions) => Answer<Result>;
  /** The items of a stream, without end. */
  readonly follow: <Item>(operation: Operation, options?: CallOptions) => AsyncIterable<Item>;
  readonly list: <Item>(operation: Operation, cursorParameter: string, options?: CallOptions) => Pages<Item>;
};

/** The options of a change, from the version alone or from the whole of them. */
export function changeOptions(given: Version | ChangeOptions): ChangeOptions {
  return typeof given === "object" ? given : { ifMatch: given };
}
