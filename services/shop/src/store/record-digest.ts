import { hash } from "node:crypto";
import { canonicalText } from "./canonical.ts";
import type { Kind } from "./kind.ts";
import type { RawRow } from "./readers.ts";

/**
 * SHA-256, in hex, of a record as it is kept: the columns of the record that hold something, in canonical JSON (RFC 8785). Columns that
 * queries need are left out, for they follow from the others, and so are empty ones: a column that is added later changes nothing.
 */
export function recordDigest(kind: Kind, row: RawRow): string {
  const names = [...kind.columns.keys()];
  const held = names.flatMap((name, index) => {
    const value = row[index];
    return value === null || value === undefined ? [] : [[name, textOrNumber(value)] as const];
  });
  return hash("sha256", canonicalText(Object.fromEntries(held)));
}

function textOrNumber(value: unknown): unknown {
  return value instanceof Uint8Array ? hash("sha256", value) : value;
}
