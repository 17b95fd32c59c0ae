import type { Change } from "../store/port.ts";
import { resealSigningKey } from "./decide.ts";
import { openKeys } from "./known-keys.ts";
import type { SigningKeyRecord } from "./record-schema.ts";
import type { Sealing } from "./sealing.ts";

/** Every signing key under another seal; or which of them, by `kid`, cannot be opened. */
export type Resealing =
  | { readonly kind: "resealed"; readonly changes: readonly Change[] }
  | { readonly kind: "not-opened"; readonly kids: readonly string[] };

/** Seals what one sealing key opens with another one. All keys or none: a shop whose keys take two is no shop that starts. */
export function resealKeys(
  records: readonly SigningKeyRecord[],
  from: Sealing,
  to: Sealing,
  at: string,
): Resealing {
  const { known, foreign } = openKeys(records, from);
  if (foreign.length > 0) return { kind: "not-opened", kids: foreign.map(({ kid }) => kid) };
  return {
    kind: "resealed",
    changes: known.flatMap(({ record, d }) => resealSigningKey(record, d, to, at).changes),
  };
}

/** Whether a sealing key opens every one of these. */
export function opensAll(records: readonly SigningKeyRecord[], sealing: Sealing): boolean {
  return openKeys(records, sealing).foreign.length === 0;
}
