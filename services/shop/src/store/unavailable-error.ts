/** Thrown when the database cannot be reached just now, or gives no connection in time. Asked again shortly, it may. */
export class UnavailableError extends Error {
  readonly code = "STORE_UNAVAILABLE";

  constructor(cause: unknown) {
    super("the database cannot be reached", { cause });
  }
}
