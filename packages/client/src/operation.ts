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
  /** Media type of the body where it is not `application/json`. */
  readonly contentType?: string;
  /** Set for what creates: it is sent with an Idempotency-Key. */
  readonly createsOnce?: true;
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

export type CreateOptions = CallOptions & {
  /** Made up for each call where none is given. Give one to create once across restarts of the caller. */
  readonly idempotencyKey?: string;
};

/** The `version` a record was read with, or its ETag. */
export type Version = number | string;

export type ChangeOptions = CallOptions & {
  /** The change is refused with `PreconditionFailed` when the record has moved on from this. */
  readonly ifMatch: Version;
};

/** Everything the core understands; each method takes the part that means something to it. */
export type AnyOptions = CreateOptions & Partial<ChangeOptions>;

/** What the generated methods are built on. */
export type Caller = {
  readonly send: <Result>(operation: Operation, options?: AnyOptions) => Answer<Result>;
  readonly list: <Item>(operation: Operation, cursorParameter: string, options?: CallOptions) => Pages<Item>;
};

/** The options of a change, from the version alone or from the whole of them. */
export function changeOptions(given: Version | ChangeOptions): ChangeOptions {
  return typeof given === "object" ? given : { ifMatch: given };
}
