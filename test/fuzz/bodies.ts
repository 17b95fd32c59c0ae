import { bodyOf, type Operation } from "../contract/bodies.ts";
import type { Furnished } from "../contract/furnish.ts";
import { straights } from "../contract/import-files.ts";
import type { Random } from "./random.ts";

/** What is sent as a body, and as what. */
export type Body = { readonly body?: object | string; readonly type?: string };

/** Values that JSON can carry and few fields should take. */
const HOSTILE: readonly unknown[] = [
  ...[null, true, false, 0, -0, -1, 1, 0.1, 1e-300, 1e21, 1e308, Number.MAX_SAFE_INTEGER, 2 ** 53],
  ...["", " ", "0", "NaN", "x".repeat(200), "x".repeat(5000), "\u0000", "\ud800", "\u202e", "e\u0301", "💥"],
  ...[
    "../../etc/passwd",
    "' OR 1=1 --",
    "=1+1",
    "bit_0",
    "9999-12-31T23:59:59Z",
    "2026-02-30",
    "[object Object]",
  ],
  ...[[], {}, [[]], [null], { id: null }, { kind: "none" }, Array.from({ length: 300 }, (_, index) => index)],
  Object.fromEntries(Array.from({ length: 100 }, (_, index) => [`key${index}`, index])),
];

/** Texts that are no JSON of ours. */
const GARBAGE = [
  ...["", "null", "[]", '"text"', "1", "{", '{"a":1,}', '{"a":1}{"b":2}', "\u0000", "{]"],
  ...['{"__proto__":{"role":"manager"}}', '{"constructor":{"prototype":{}}}', '{"a":1e999}'],
  ...["[".repeat(100), `${'{"a":'.repeat(70)}1${"}".repeat(70)}`, " ".repeat(300 * 1024)],
];

const TYPES = [
  "text/plain",
  "text/xml",
  "application/json; charset=utf-16",
  "image/png",
  "text/csv",
  "",
  "a/b/c",
];

/** A body for an operation: valid as often as not, else nearly valid or hostile. */
export function bodyFor(operation: Operation, ids: Furnished["ids"], random: Random): Body {
  if (operation.id === "importBits") return fileFor(random);
  if (!operation.takesJson) return random.percent(95) ? {} : { body: random.of(GARBAGE) };
  const valid = bodyOf(operation, ids);
  if (random.percent(40)) return { body: valid };
  if (random.percent(10)) return { body: random.of(GARBAGE) };
  if (random.percent(5)) return { body: JSON.stringify(valid), type: random.of(TYPES) };
  let body: unknown = structuredClone(valid);
  for (let count = 1 + random.below(3); count > 0; count -= 1) body = mutated(body, random);
  return typeof body === "object" && body !== null ? { body } : { body: JSON.stringify(body) };
}

/** The value with something in it replaced, taken away, added or doubled. */
function mutated(value: unknown, random: Random): unknown {
  if (typeof value !== "object" || value === null || random.percent(5)) return instead(value, random);
  const names = Object.keys(value);
  if (names.length === 0 || random.percent(10)) {
    return Array.isArray(value) ? [...value, random.of(HOSTILE)] : { ...value, extra: random.of(HOSTILE) };
  }
  const name = random.of(names);
  if (Array.isArray(value)) {
    if (random.percent(15)) return [...value, ...value];
    return value.map((each, index) => (String(index) === name ? mutated(each, random) : each));
  }
  const { [name]: old, ...rest }: Record<string, unknown> = { ...value };
  return random.percent(15) ? rest : { ...rest, [name]: mutated(old, random) };
}

/** Another value of the same type, near it or at the far end; or one of another type. */
function instead(value: unknown, random: Random): unknown {
  if (random.percent(50)) return random.of(HOSTILE);
  if (typeof value === "number")
    return random.of([-value, value * 10, value / 10, value + 1e-9, value * 1e6]);
  if (typeof value === "string")
    return random.of([`${value} `, value.toUpperCase(), value.slice(1), value + value]);
  return value;
}

function fileFor(random: Random): Body {
  const csv = straights(["First", "Second, of two", '3 1/2" cove']);
  const line = JSON.stringify({ name: "A bit" });
  const text = random.of([
    csv,
    csv.replaceAll(",", ";"),
    `${csv},,,\n`,
    csv.slice(0, -9),
    `${line}\n{`,
    "\n\n",
    "\u0000",
  ]);
  const at = random.below(text.length + 1);
  const spoiled = random.percent(50)
    ? text
    : text.slice(0, at) + random.of(['"', ",", "\r", "\u202e", "1/2"]) + text.slice(at);
  return { body: spoiled, type: random.of(["text/csv", "application/x-ndjson", "text/csv; charset=utf-8"]) };
}
