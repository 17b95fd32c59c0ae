import { DomainError, describeFault } from "@rimwise/domain";
import type { FastifyError } from "fastify";
import type { ProblemCode } from "./codes.ts";
import { fieldFaults } from "./from-ajv.ts";
import { notValid, Problem, type RequestPart } from "./problem.ts";
import { tryAgainShortly } from "./shortly.ts";

const PLACES: Readonly<Record<string, RequestPart>> = {
  body: "body",
  querystring: "query",
  params: "path",
  headers: "header",
};

/** Seconds until a database that was started again, or its standby, may be there. */
const DATABASE_RETRY_AFTER_S = "2";

const BY_FRAMEWORK_CODE: Readonly<Record<string, ProblemCode>> = {
  FST_ERR_CTP_EMPTY_JSON_BODY: "not-json",
  FST_ERR_CTP_INVALID_JSON_BODY: "not-json",
  FST_ERR_CTP_INVALID_MEDIA_TYPE: "media-type-not-supported",
  FST_ERR_CTP_BODY_TOO_LARGE: "body-too-large",
  FST_ERR_MAX_PARAM_LENGTH: "path-too-long",
  SQLITE_BUSY: "busy",
  SQLITE_FULL: "disk-full",
  ENOSPC: "disk-full",
  SQLITE_READONLY: "database-read-only",
  SQLITE_READONLY_DBMOVED: "database-read-only",
  STORE_UNAVAILABLE: "database-away",
  STORE_OUTCOME_UNKNOWN: "outcome-unknown",
  STORE_BUSY: "busy",
  // A PostgreSQL server that is full, a standby by now, without a connection to spare, going down, or coming up (its manual, appendix A).
  "53100": "disk-full",
  "25006": "database-read-only",
  "53300": "busy",
  "57P01": "database-away",
  "57P02": "database-away",
  "57P03": "database-away",
};

/** What the domain answers; its faults point to the fields of the request. */
export function pointedBy<Answer>(pointerOf: (domains: string) => string, ask: () => Answer): Answer {
  try {
    return ask();
  } catch (error) {
    throw error instanceof DomainError ? fromDomain(error, pointerOf) : error;
  }
}

/** Any error as a problem. What is not known becomes a 500 that says nothing of its cause. */
export function problemFrom(error: unknown): Problem {
  if (error instanceof Problem) return error;
  if (error instanceof DomainError) return fromDomain(error);
  if (!isFastifyError(error)) return internal();
  if (error.validation !== undefined) {
    const errors = fieldFaults(error.validation, PLACES[error.validationContext ?? "body"] ?? "body");
    return notValid(errors);
  }
  return fromFramework(error);
}

/** The domain's faults as a problem with a pointer for each, as the request names what the domain names otherwise. */
function fromDomain(
  { faults }: DomainError,
  pointerOf: (domains: string) => string = (pointer) => pointer,
): Problem {
  return notValid(
    faults.map((fault) => ({ in: "body", pointer: pointerOf(fault.pointer), ...describeFault(fault) })),
  );
}

function fromFramework(error: FastifyError): Problem {
  const code = BY_FRAMEWORK_CODE[error.code];
  switch (code) {
    case undefined:
      return error.statusCode !== undefined && error.statusCode >= 400 && error.statusCode < 500
        ? new Problem("malformed-request", error.message)
        : internal();
    case "not-json":
      return new Problem(code, "Send one JSON object, without __proto__ or constructor members.");
    case "media-type-not-supported":
      return new Problem(code, "Send the body as application/json.", {
        headers: { Accept: "application/json" },
      });
    case "body-too-large":
      // What is left of it is not read.
      return new Problem(code, error.message, { headers: { Connection: "close" } });
    case "busy":
      return tryAgainShortly(code);
    case "database-away":
      return new Problem(
        code,
        "Nothing was changed. Send it again: the service goes on by itself when the database is back.",
        {
          headers: { "Retry-After": DATABASE_RETRY_AFTER_S },
        },
      );
    case "outcome-unknown":
      return new Problem(
        code,
        "The database went away while this was written. Send it again with the same Idempotency-Key: if it was written, that gives the first answer; without a key, look first.",
        { headers: { "Retry-After": DATABASE_RETRY_AFTER_S } },
      );
    case "disk-full":
      return new Problem(code, "Nothing was changed. Whoever runs the service must make room on its disk.");
    case "database-read-only":
      return new Problem(code, "Nothing was changed. Whoever runs the service must make its file writable.");
    default:
      return new Problem(code, error.message);
  }
}

function internal(): Problem {
  return new Problem("internal", "The cause is in the service's log, under this request's id.");
}

function isFastifyError(error: unknown): error is FastifyError {
  return error instanceof Error && "code" in error && typeof error.code === "string";
}
