import type { RouteOptions } from "fastify";
import type { Scope } from "../access/scopes.ts";
import { REASON_ACCEPTED } from "../http/change-reason.ts";
import type { Operation } from "../http/operation.ts";
import type { Example } from "./examples.ts";
import { PROBLEM_RESPONSES } from "./problem-responses.ts";
import {
  EVERY_ANSWER,
  type Header,
  header,
  type MediaType,
  REPLAYED,
  type ResponseObject,
} from "./responses.ts";

/** What a route's registration says beyond its schemas. */
export type RouteFacts = {
  readonly operation: Operation;
  readonly scope: Scope | "public";
  readonly isPublic: boolean;
  /** Whether it may be asked as often as anybody likes. */
  readonly isUncounted: boolean;
  /** Whether it only looks, by its method. */
  readonly isLook: boolean;
  /** Whether it leaves an event behind. */
  readonly isChange: boolean;
  /** Whether it makes or changes anything, be it a record or a file: then it is done once for each Idempotency-Key. */
  readonly isWrite: boolean;
  readonly hasPath: boolean;
  readonly hasQuery: boolean;
};

type ParameterObject = { required?: boolean; schema?: { default?: unknown; type?: unknown } };

/** The part of an OpenAPI operation that is added to here. */
export type OperationObject = {
  parameters?: ParameterObject[];
  requestBody?: { content?: Record<string, MediaType> };
  responses?: Record<string, ResponseObject>;
  security?: object[];
  /** The scope that a key needs for it; absent if none is needed. */
  "x-scope"?: Scope;
};

const ETAG = header("The record's version, to send as If-Match with a change.");
const ACTED_ETAG = header("The record's version, if one record is answered.");
const LOCATION = header("Where the new record is.");
const PREFERENCE_APPLIED = {
  "Preference-Applied": header("`return=minimal` if the body was left out as preferred."),
};
const LINK = header('The next page, as `rel="next"` (RFC 8288). Absent on the last one.');

const IF_MATCH = parameter("If-Match", "ETag of the version to change. Needed.", true);
const IF_NONE_MATCH = parameter("If-None-Match", "ETags the caller has already; answered with 304.", false);
const IDEMPOTENCY_KEY = parameter(
  "Idempotency-Key",
  "Any text of up to 255 visible ASCII characters. The same request with the same key is done once; kept for 24 hours.",
  false,
);

const PREFER = parameter(
  "Prefer",
  "`return=minimal` leaves the body out of the answer (RFC 7240); a change is then answered with 204.",
  false,
);

const CHANGE_REASON = parameter(
  "Change-Reason",
  `Why this is done: kept as \`why\` on its events. Takes ${REASON_ACCEPTED}.`,
  false,
);

const JSON_TYPE = "application/json";
const JSON_TYPES = /[/+]json$/;

/** Scopes that let a caller look or reckon, and write nothing. */
const WRITES_NOTHING = /:(read|compute)$/;
/** Copies everything, and changes no record. */
const COPIES = "backups:manage" satisfies Scope;

/** What a route does, read off its registration. */
export function routeFacts({ config, schema, method }: RouteOptions): RouteFacts {
  const { operation = "act", scope = "public" } = config ?? {};
  const isPublic = scope === "public";
  const isLook = [method].flat().every((each) => each === "GET" || each === "HEAD");
  const isWrite = !isLook && !isPublic && !WRITES_NOTHING.test(scope);
  return {
    operation,
    scope,
    isPublic,
    isUncounted: config?.isHealthCheck === true,
    isLook,
    isChange: isWrite && scope !== COPIES,
    isWrite,
    hasPath: schema?.params !== undefined,
    hasQuery: schema?.querystring !== undefined,
  };
}

/** Completes an operation with the headers, problems and key that follow from what its route does. */
export function completeOperation(operation: OperationObject, facts: RouteFacts): void {
  operation.parameters = [
    ...(operation.parameters ?? []).map(neededOnlyWithoutDefault).map(withCommas),
    ...conditionParameters(facts),
  ];
  const responses = { ...operation.responses };
  for (const [status, response] of Object.entries(responses)) {
    response.headers = status.startsWith("2") ? successHeaders(facts) : EVERY_ANSWER;
  }
  if (facts.operation === "change") {
    responses["204"] = {
      description: "Changed; the caller preferred no body.",
      headers: { ...successHeaders(facts), ...PREFERENCE_APPLIED },
    };
  }
  if (facts.operation === "read") {
    responses["304"] = { description: "The caller has it already.", headers: successHeaders(facts) };
  }
  for (const status of problemStatuses(facts)) {
    // Readiness answers 503 with a body of its own.
    responses[status] ??= { $ref: `#/components/responses/${PROBLEM_RESPONSES[status].name}` };
  }
  operation.responses = responses;
  operation.security = facts.isPublic ? [] : [{ key: [] }];
  if (facts.scope !== "public") operation["x-scope"] = facts.scope;
}

/** Shows what was sent and answered in one case. */
export function showExample(operation: OperationObject, { body, status, answer }: Example): void {
  const sent = operation.requestBody?.content?.[JSON_TYPE];
  if (sent !== undefined && body !== undefined) sent.example = body;
  const answered = Object.entries(operation.responses?.[status]?.content ?? {});
  for (const [type, content] of answered)
    if (JSON_TYPES.test(type) && answer !== undefined) content.example = answer;
}

/** What has a default is filled in before a handler sees it, so to the handler's type it is always there. */
function neededOnlyWithoutDefault(parameter: ParameterObject): ParameterObject {
  return parameter.schema?.default === undefined ? parameter : { ...parameter, required: false };
}

/** A list among the query parameters is written with commas between its items. */
function withCommas(parameter: ParameterObject): ParameterObject {
  return parameter.schema?.type === "array"
    ? { ...parameter, ...{ style: "form", explode: false } }
    : parameter;
}

function conditionParameters({ operation, isChange, isWrite }: RouteFacts): object[] {
  const always = [...(isWrite ? [IDEMPOTENCY_KEY] : []), ...(isChange ? [CHANGE_REASON] : [])];
  switch (operation) {
    case "read":
      return [IF_NONE_MATCH];
    case "create":
      return [PREFER, ...always];
    case "change":
      return [IF_MATCH, PREFER, ...always];
    case "remove":
      return [IF_MATCH, ...always];
    default:
      return always;
  }
}

function successHeaders({ operation, isWrite }: RouteFacts): Record<string, Header> {
  const always = { ...EVERY_ANSWER, ...(isWrite && { "Idempotent-Replayed": REPLAYED }) };
  switch (operation) {
    case "list":
      return { ...always, Link: LINK };
    case "read":
    case "change":
      return { ...always, ETag: ETAG };
    case "create":
      return { ...always, ETag: ETAG, Location: LOCATION, ...PREFERENCE_APPLIED };
    case "act":
      return isWrite ? { ...always, ETag: ACTED_ETAG } : always;
    default:
      return always;
  }
}

function problemStatuses(facts: RouteFacts) {
  const { operation, isPublic, isUncounted, isLook, hasPath, hasQuery } = facts;
  const statuses: (keyof typeof PROBLEM_RESPONSES)[] = ["400", "413", "431", "500", "503"];
  if (!isPublic) statuses.push("401", "403");
  if (!isUncounted) statuses.push("429");
  if (hasPath) statuses.push("404", "414");
  // A body that is not asked for is read all the same.
  if (!isLook) statuses.push("408", "415", "417");
  if (!isLook || hasQuery) statuses.push("422");
  if (!isLook || operation === "act") statuses.push("409");
  if (!isLook) statuses.push("507");
  if (operation === "change" || operation === "remove") statuses.push("412", "428");
  return isPublic ? statuses.filter((status) => status !== "409" && status !== "507") : statuses;
}

function parameter(name: string, description: string, required: boolean) {
  return { name, in: "header", required, description, schema: { type: "string" } };
}
