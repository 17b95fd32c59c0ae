/**
 * Why a database does not answer just now: it is away; it is too busy, with all connections in use or somebody writing amid what was
 * read; or it went away while it was told to commit.
 */
type Cause = "STORE_UNAVAILABLE" | "STORE_BUSY" | "STORE_OUTCOME_UNKNOWN";

/** Thrown when the database cannot be reached just now, or gives no connection in time. Asked again shortly, it may. */
export class UnavailableError extends Error {
  readonly code: Cause;

  constructor(cause: unknown, code: Cause = "STORE_UNAVAILABLE") {
    super("the database cannot be reached", { cause });
    this.code = code;
  }
}
