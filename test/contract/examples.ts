import { expect } from "vitest";
import type { Operation } from "./bodies.ts";

/** What an operation was sent and what it answered, as the API description shows it. */
export type Example = { readonly body?: unknown; readonly status: number; readonly answer?: unknown };

/** Kept beside the description, which is completed with it. */
const FILE = "../../openapi/examples.json";

const ID = /\b([a-z]+_)[0-9a-f]{32}\b/g;

/** What differs from run to run, and what it is shown as. */
const RANDOM: readonly (readonly [RegExp, string])[] = [
  [/\brw_[0-9a-z_]+/g, "rw_shown-this-once"],
  // Requests.
  [/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, "01980000-0000-7000-8000-000000000001"],
  [/\beyJ[\w-]+\.[\w-]*\.[\w-]+/g, "eyJhbGciOiJFZERTQSJ9.e30.c2lnbmF0dXJl"],
  // Digests of what is cut at a set-up, ids of records among it.
  [/\bsetup_[0-9a-f]{16}\b/g, "setup_0123456789abcdef"],
  // SHA-256 of nothing.
  [/\b[0-9a-f]{64}\b/g, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
  [/("nextCursor":")[^"]+/g, "$1Yml0XzAx"],
  // Public halves of signing keys, and their thumbprints (RFC 7638), by which they are called.
  [/"[\w-]{43}"/g, '"11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo"'],
  [/("sizeBytes":)\d+/g, "$1450560"],
];

/** Examples by the id of their operation. */
export type Examples = Map<string, Example>;

/** Adds an example in the form that every run of the tests gives it. */
export function addExample(examples: Examples, { id }: Pick<Operation, "id">, example: Example): void {
  examples.set(id, stable(example));
}

/** Holds examples, by the names of their operations, against those that are kept; `vitest -u` keeps them. */
export async function expectKept(examples: Examples): Promise<void> {
  const sorted = [...examples].sort(([one], [other]) => (one < other ? -1 : 1));
  await expect(`${JSON.stringify(Object.fromEntries(sorted), null, 2)}\n`).toMatchFileSnapshot(FILE);
}

/** The same with ids that are numbered in order, and nothing in it that another run would have differently. */
function stable(example: Example): Example {
  const ids = new Map<string, string>();
  const text = JSON.stringify(example).replaceAll(ID, (id, prefix: string) => {
    const number = String(ids.size + 1).padStart(12, "0");
    const shown = ids.get(id) ?? `${prefix}01980000000070008000${number}`;
    ids.set(id, shown);
    return shown;
  });
  return JSON.parse(RANDOM.reduce((shown, [what, instead]) => shown.replaceAll(what, instead), text));
}
