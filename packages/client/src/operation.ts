import type { Answer } from "./answer.ts";
import type { Pages } from "./pages.ts";

/** One call as data: what the generated methods hand to the core. */
export type Operation = {
  /** Default: GET. */
  readonly method?: "GET" | "POST" | "PUT" | "PATCH" | "DELETE";
  /** The path as the API description has it, such as `/v1/bits/{bitId}`; or `/v1/bits/{}` with `ids`. */
  readonly path: string;
  readonly pathParameters?: Readonly<Record<string, string>> | undefined;
  /** Those of `{}` in their order: what the generated methods give, because it is shorter. */
  readonly ids?: readonly string[];
  readonly query?: Query | undefined;
  readonly body?: unknown;
  /** A body that is sent as it is. */
  readonly data?: FileBody<string>["data"] | undefined;
  /** Media type of the body. Default: `application/json`. */
  readonly contentType?: string | undefined;
  /** Media types of its answer; none if it has no body. Default: `application/json`. */
  readonly answers?: readonly string[] | undefined;
  /** Set for a POST that writes nothing: what is neither this nor a GET is sent with an Idempotency-Key. */
  readonly isQuestion?: true;
};

/** A file to send. A stream is sent once: a call that fails with one is not tried again. */
export type FileBody<Type extends string> = {
  readonly contentType: Type;
  readonly data: string | Blob | Uint8Array<ArrayBuffer> | ReadableStream<Uint8Array>;
};

export type Query = Readonly<Record<string, QueryValue | readonly QueryValue[] | undefined>>;
type QueryValue = string | number | boolean;

/** The same fields, each of which may be undefined, which is the same as absent. */
export type Loose<Fields> = { readonly [Name in keyof Fields]: Fields[Name] | undefined };

/** What may be said of any one call. */
export type CallOptions = {
  /** Ends the call, between attempts too; the call then rejects with the signal's reason. */
  readonly signal?: AbortSignal | undefined;
  /** For one attempt, its body included; of a body that is read as a stream, for each part. */
  readonly timeoutMs?: number | undefined;
  /** For the whole call, its waits included. */
  readonly deadlineMs?: number | undefined;
  /** Attempts after the first. */
  readonly retries?: number | undefined;
  /** Sent beside the client's own; the same name replaces the client's default. */
  readonly headers?: Readonly<Record<string, string>> | undefined;
};

/** What may be said of a call that changes something. */
export type WriteOptions = CallOptions & {
  /** Why: kept with the events of the change. */
  readonly reason?: string | undefined;
  /** Made up for each call if none is given. Give one to do it once across restarts of the caller. */
  readonly idempotencyKey?: string | undefined;
};

/** The `version` a record was read with, or its ETag. */
export type RecordVersion = number | string;

export type ChangeOptions = WriteOptions & {
  /** The change is refused with `PreconditionFailed` when the record has moved on from this. */
  readonly ifMatch: RecordVersion;
};

/** A read of a record that is already known in one version. */
export type ConditionalOptions = CallOptions & {
  /** The version that is known: if the record has no other by now, the answer is `NOT_MODIFIED`. */
  readonly ifNoneMatch: RecordVersion;
};

/** A file is given while it arrives. */
export type StreamOptions = { readonly asStream: true };

/** Everything the core understands; each method takes the part that means something to it. */
export type AnyOptions = WriteOptions & {
  readonly ifMatch?: RecordVersion | undefined;
  readonly ifNoneMatch?: RecordVersion | undefined;
  readonly asStream?: true | undefined;
  /** Takes the place of the operation's. */
  readonly query?: Query | undefined;
};

/** What the generated methods are built on. */
export type Caller = {
  readonly send: <Result>(operation: Operation, options?: AnyOptions) => Answer<Result>;
  /** The items of a stream, without end. */
  readonly follow: <Item>(operation: Operation, options?: CallOptions) => AsyncIterable<Item>;
  readonly list: <Item>(operation: Operation, options?: CallOptions, cursorParameter?: string) => Pages<Item>;
};

/** The options of a change, from the version alone or from the whole of them. */
export function changeOptions(given: RecordVersion | ChangeOptions): ChangeOptions {
  return typeof given === "object" ? given : { ifMatch: given };
}

/** A body that may be a record or a file: only a file says its own type. */
export function bodyOrFile(
  given: object | FileBody<string>,
): Pick<Operation, "body" | "data" | "contentType"> {
  return "contentType" in given ? { data: given.data, contentType: given.contentType } : { body: given };
}
