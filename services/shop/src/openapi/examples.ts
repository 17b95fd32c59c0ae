import { readFileSync } from "node:fs";

/** What an operation was sent and what it answered when the tests ran it. */
export type Example = { readonly body?: unknown; readonly status: number; readonly answer?: unknown };

const FILE = new URL("../../../../openapi/examples.json", import.meta.url);

/** An example of every operation that takes or answers JSON, by its id. The tests keep them as they are answered. */
export function keptExamples(): Readonly<Record<string, Example>> {
  return JSON.parse(readFileSync(FILE, "utf8"));
}
