import { createRequire } from "node:module";

// The package's types describe an ES module; what it ships is CommonJS.
const serialize: (value: unknown) => string | undefined = createRequire(import.meta.url)("canonicalize");

/** A value as canonical JSON (RFC 8785): the same bytes whatever order its members came in. */
export function canonicalText(value: unknown): string {
  const text = serialize(value);
  if (text === undefined) throw new TypeError("only JSON values have a canonical text");
  return text;
}
