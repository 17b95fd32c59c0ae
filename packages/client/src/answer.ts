/** What came with the data. */
export type AnswerDetails = {
  readonly status: number;
  readonly headers: Headers;
  readonly requestId: string | undefined;
  readonly etag: string | undefined;
  /** The service had already done this under the same Idempotency-Key, and repeats what it said then. */
  readonly isReplayed: boolean;
};

export type Delivered<Result> = { readonly data: Result; readonly response: AnswerDetails };

/** A promise of the data; `withResponse()` gives what came with it too. */
export type Answer<Result> = Promise<Result> & {
  readonly withResponse: () => Promise<Delivered<Result>>;
};

/** The data, and on demand what it came with. */
export function answerOf<Result>(delivery: Promise<Delivered<Result>>): Answer<Result> {
  const data = delivery.then((delivered) => delivered.data);
  const withResponse = () => {
    // Nobody awaits the bare data now, so its rejection must not go unhandled.
    data.catch(() => {});
    return delivery;
  };
  return Object.assign(data, { withResponse });
}

/** The parts of an answer's head that people ask for by name. */
export function answerDetails(status: number, headers: Headers): AnswerDetails {
  return {
    status,
    headers,
    requestId: headers.get("x-request-id") ?? undefined,
    etag: headers.get("etag") ?? undefined,
    isReplayed: headers.get("idempotent-replayed") === "true",
  };
}
