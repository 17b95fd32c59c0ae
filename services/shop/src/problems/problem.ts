import { PROBLEMS, type ProblemCode, problemType } from "./codes.ts";

/** The part of a request that a fault lies in. */
export type RequestPart = "body" | "query" | "path" | "header";

/** One field that cannot be accepted, and what would be. */
export type FieldFault = {
  readonly in: RequestPart;
  /** JSON Pointer (RFC 6901) from the root of the body, the query, the path parameters or the headers. */
  readonly pointer: string;
  readonly message: string;
  readonly accepted: string;
};

type Extras = {
  readonly errors?: readonly FieldFault[];
  /** What is wrong with a file, line by line: the report of its kind of import. */
  readonly report?: object;
  readonly headers?: Readonly<Record<string, string>>;
  /** What the log needs to know of it. */
  readonly cause?: unknown;
};

/** A refusal with its code, thrown anywhere in the service and answered by `http/answer-problems.ts`. */
export class Problem extends Error {
  readonly code: ProblemCode;
  readonly status: number;
  readonly errors: readonly FieldFault[];
  readonly report: object | undefined;
  readonly headers: Readonly<Record<string, string>>;

  constructor(code: ProblemCode, detail: string, extras: Extras = {}) {
    super(detail, "cause" in extras ? { cause: extras.cause } : undefined);
    this.name = "Problem";
    this.code = code;
    this.status = PROBLEMS[code].status;
    this.errors = extras.errors ?? [];
    this.report = extras.report;
    this.headers = extras.headers ?? {};
  }
}

/** So many faults are named: more say nothing new, and a hostile body must not buy a long answer. */
export const MOST_FAULTS = 50;

/** The refusal of input whose fields are named. */
export function notValid(errors: readonly FieldFault[]): Problem {
  return new Problem("not-valid", "Nothing was changed. Each field below says what it accepts.", { errors });
}

/** The RFC 9457 body of a problem. `instance` is the path asked for. */
export function problemBody(problem: Problem, requestId: string, instance: string) {
  return {
    type: problemType(problem.code),
    title: PROBLEMS[problem.code].title,
    status: problem.status,
    detail: problem.message,
    instance,
    code: problem.code,
    requestId,
    ...(problem.errors.length > 0 ? { errors: [...problem.errors] } : {}),
    ...(problem.report !== undefined ? { report: problem.report } : {}),
  };
}

/** The path of a request without its query: the `instance` of its problems. */
export function pathOf({ url }: { readonly url: string }): string {
  return url.split("?", 1)[0] ?? url;
}
