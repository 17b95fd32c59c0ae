import type { Problem } from "./generated/types.gen.ts";

/** What an answer that is not a success said. */
export type Refusal = {
  readonly status: number;
  readonly headers: Headers;
  /** Absent if something between here and the service answered in a form of its own. */
  readonly problem: Problem | undefined;
};

/** The call that failed: enough to ask again under the same key, and to find it in the service's log. */
export type FailedCall = {
  readonly method: string;
  readonly path: string;
  /** How often it was sent. */
  readonly attempts: number;
  /** Absent for what writes nothing. Send it again with this one and it is done once, however often it was tried. */
  readonly idempotencyKey: string | undefined;
  /** What the service knows the request by: sent with every attempt. */
  readonly requestId: string | undefined;
};

/** Everything a call can fail with but the caller's own reason: `ApiError`, `ConnectionError`, `TimeoutError`. */
export class CallError extends Error {
  readonly call?: FailedCall;
  /** Of whatever answered; undefined if nothing did. */
  readonly status: number | undefined;
  /** The answer's; undefined if there was none. */
  readonly headers: Headers | undefined;
}

/** The service answered, and the answer is an error. `problem` is its RFC 9457 body. */
export class ApiError extends CallError {
  override readonly name: string = "ApiError";
  override readonly status: number;
  override readonly headers: Headers;
  /** The stable code to branch on, such as `not-found`; `unknown` if the answer was not the service's own. */
  readonly code: Problem["code"] | "unknown";
  /** Quote it when asking for help: it is in the service's log. */
  readonly requestId: string | undefined;
  readonly problem: Problem | undefined;
  /** How long the service asked to be left alone, ms. */
  readonly retryAfterMs: number | undefined;

  constructor({ status, headers, problem }: Refusal) {
    super(messageFor(status, problem));
    this.status = status;
    this.headers = headers;
    this.problem = problem;
    this.code = problem?.code ?? "unknown";
    this.requestId = problem?.requestId ?? headers.get("x-request-id") ?? undefined;
    this.retryAfterMs = retryAfterMs(headers);
  }
}

/** 401: the key is missing or not valid. */
export class Unauthorized extends ApiError {
  override readonly name = "Unauthorized";
}

/** 403: the key's role may not do this. */
export class Forbidden extends ApiError {
  override readonly name = "Forbidden";
}

/** 404: there is nothing there, or nothing this key may know of. */
export class NotFound extends ApiError {
  override readonly name = "NotFound";
}

/** 409: it cannot be done as things stand. */
export class Conflict extends ApiError {
  override readonly name = "Conflict";
}

/** 412: the record has changed since it was read. `etag` is its current one. */
export class PreconditionFailed extends ApiError {
  override readonly name = "PreconditionFailed";
  readonly etag: string | undefined;

  constructor(refusal: Refusal) {
    super(refusal);
    this.etag = refusal.headers.get("etag") ?? undefined;
  }
}

/** 422: some of the input cannot be accepted, and nothing was changed. `faults` names each field. */
export class ValidationFailed extends ApiError {
  override readonly name = "ValidationFailed";
  readonly faults: NonNullable<Problem["errors"]>;

  constructor(refusal: Refusal) {
    super(refusal);
    this.faults = refusal.problem?.errors ?? [];
  }
}

/** 429: too many requests. `retryAfterMs` says when to come back. */
export class RateLimited extends ApiError {
  override readonly name = "RateLimited";
}

/**
 * No answer of the service arrived whole: it is away, the connection broke, or something in between answered. `cause` is what
 * was thrown.
 */
export class ConnectionError extends CallError {
  override readonly name = "ConnectionError";
  /**
   * `redirected`, `not-the-service` for an answer that is not of the operation's media type, what the platform calls the fault,
   * such as `ECONNREFUSED`, or `unknown`.
   */
  readonly code: string;

  constructor(message: string, options: ErrorOptions & { readonly code?: string } = {}) {
    const code = options.code ?? codeOf(options.cause);
    super(code === undefined ? `${message}.` : `${message} (${code}).`, options);
    this.code = code ?? "unknown";
  }
}

/** No answer arrived whole within the time allowed for one attempt. */
export class TimeoutError extends CallError {
  override readonly name = "TimeoutError";
  readonly timeoutMs: number;

  constructor(timeoutMs: number) {
    super(`No whole answer within ${Math.round(timeoutMs)} ms.`);
    this.timeoutMs = timeoutMs;
  }
}

const BY_STATUS: Readonly<Record<number, typeof ApiError>> = {
  401: Unauthorized,
  403: Forbidden,
  404: NotFound,
  409: Conflict,
  412: PreconditionFailed,
  422: ValidationFailed,
  429: RateLimited,
};

/** The error for an answer that is not a success, of the class people catch for its status. */
export function apiErrorFor(refusal: Refusal): ApiError {
  return new (BY_STATUS[refusal.status] ?? ApiError)(refusal);
}

function messageFor(status: number, problem: Problem | undefined): string {
  if (problem === undefined) return `HTTP ${status}, in a form the service does not use.`;
  const faults = (problem.errors ?? []).map(({ pointer, message }) => ` ${pointer}: ${message}`);
  return `${status} ${problem.code}: ${problem.detail}${faults.join("")}`;
}

/** `Retry-After` in ms: seconds or a date (RFC 9110 section 10.2.3), by the clock of whoever answered. */
function retryAfterMs(headers: Headers): number | undefined {
  const text = headers.get("retry-after");
  if (text === null) return undefined;
  if (/^\d+$/.test(text.trim())) return Number(text) * 1000;
  const date = Date.parse(text);
  const answeredAt = Date.parse(headers.get("date") ?? "");
  const from = Number.isNaN(answeredAt) ? Date.now() : answeredAt;
  return Number.isNaN(date) ? undefined : Math.max(0, date - from);
}

/** What the platform calls a fault; it may lie some causes deep. */
function codeOf(cause: unknown): string | undefined {
  for (let each = cause, depth = 0; each instanceof Error && depth < 5; each = each.cause, depth += 1) {
    if ("code" in each && typeof each.code === "string") return each.code;
  }
  return undefined;
}
