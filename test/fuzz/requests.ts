import { readFileSync } from "node:fs";
import { OPERATIONS, type Operation, unrealUrlOf, urlOf } from "../contract/bodies.ts";
import type { Furnished } from "../contract/furnish.ts";
import { bodyFor } from "./bodies.ts";
import type { Random } from "./random.ts";

export type FuzzRequest = {
  readonly operation: Operation;
  readonly url: string;
  readonly headers: Record<string, string>;
  readonly key: string | null;
  readonly body?: object | string;
};

type Parameter = {
  readonly name: string;
  readonly in: string;
  readonly schema: { readonly enum?: string[] };
};

const written: {
  readonly paths: Readonly<
    Record<string, Readonly<Record<string, { readonly parameters?: readonly Parameter[] }>>>
  >;
} = JSON.parse(readFileSync(new URL("../../openapi/openapi.json", import.meta.url), "utf8"));

/** Those that answer and end. */
const ASKED = OPERATIONS.filter(({ isEndless }) => !isEndless);

const QUERY_VALUES = [
  "",
  "1",
  "0",
  "-1",
  "1e9",
  "NaN",
  "true",
  "yes",
  "%00",
  "%ff",
  "a%CC%81",
  "x".repeat(300),
  "2026-01-01T00:00:00Z",
  "3000-01-01T00:00:00Z",
  "3%201/2",
  "*",
  "%22",
  "bit_0",
];
const PATH_PARTS = ["%00", "%ff", "..", "%2e%2e", "x".repeat(99), "x".repeat(101), "a%20b", "%F0%9F%92%A5"];
const IF_MATCH = ["*", '"1"', '"2"', 'W/"1"', '"none"', "none", '"1", "2"', ""];
const REASONS = ["a new bearing", "%E2%80%AE", "%00", "", "x".repeat(301), "100%", "Fra%CC%81ser"];

/** The next request of a seed. */
export function requestFrom(random: Random, { ids, keys }: Furnished): FuzzRequest {
  const operation = random.of(ASKED);
  const { body, type } = bodyFor(operation, ids, random);
  const key = random.percent(60)
    ? keys.manager
    : random.of([keys.instructor, keys.member, keys.student, null, "rw_none", `${keys.manager}x`]);
  const headers = { ...headersFor(operation, random), ...(type !== undefined && { "content-type": type }) };
  const url = pathFor(operation, ids, random) + queryFor(operation, random);
  return { operation, url, headers, key, ...(body !== undefined && { body }) };
}

function pathFor(operation: Operation, ids: Furnished["ids"], random: Random): string {
  if (random.percent(90)) return urlOf(operation, ids);
  if (random.percent(50)) return unrealUrlOf(operation);
  return operation.path.replaceAll(/\{\w+\}/g, () => random.of(PATH_PARTS));
}

function queryFor({ path, method }: Operation, random: Random): string {
  if (random.percent(50)) return "";
  const parameters = written.paths[path]?.[method.toLowerCase()]?.parameters ?? [];
  const asked = parameters.filter((each) => each.in === "query" && random.percent(30));
  const given = asked.map(({ name, schema }) => `${name}=${random.of(schema.enum ?? QUERY_VALUES)}`);
  if (random.percent(5))
    given.push(`${random.of(["extra", "__proto__", "limit", "a[b]"])}=${random.of(QUERY_VALUES)}`);
  return given.length === 0 ? "" : `?${given.join("&")}`;
}

function headersFor({ method }: Operation, random: Random): Record<string, string> {
  const change = ["PATCH", "PUT", "DELETE"].includes(method);
  return {
    ...(change && random.percent(90) && { "If-Match": random.percent(70) ? "*" : random.of(IF_MATCH) }),
    ...(method === "POST" &&
      random.percent(10) && { "Idempotency-Key": random.of(["once", "twice", "\u00e9", "k".repeat(300)]) }),
    ...(method === "GET" && random.percent(10) && { "If-None-Match": random.of(IF_MATCH) }),
    ...(random.percent(10) && { "Change-Reason": random.of(REASONS) }),
  };
}
