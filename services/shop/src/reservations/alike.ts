import { facet } from "../bits/facets.ts";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { Question } from "../store/query.ts";
import { type Days, inTheWay } from "./days.ts";
import { reservations } from "./reads.ts";

/** Sizes that differ by less are the same for the cut, mm or degrees: fresh bits of one box differ as much. Ours. */
const SAME_SIZE = 0.1;

/** So many bits of a form are looked at for one that is alike, and so many are named. */
const MOST_LOOKED_AT = 200;
const MOST_NAMED = 3;

/** Whether two forms make the same cut: of one kind, with the same sizes. */
export function isAlike(one: BitRecord["form"], other: BitRecord["form"]): boolean {
  if (one.kind !== other.kind) return false;
  const sizes = new Map<string, unknown>(Object.entries(other));
  const own = Object.entries(one);
  return own.length === sizes.size && own.every(([name, size]) => isSame(size, sizes.get(name)));
}

/** Bits in the rack that make the same cut as one that is not free, and are themselves free for these days. */
export function* freeInstead(bit: BitRecord, days: Days): Question<BitRecord[]> {
  const match = { words: [], anyOfFacets: [[facet("kind", bit.form.kind)], [facet("state", "in-rack")]] };
  const found: BitRecord[] = [];
  for (const { record } of yield* bits.search(0, MOST_LOOKED_AT, { match })) {
    if (record.id === bit.id || !isAlike(record.form, bit.form)) continue;
    if (record.missingSince !== undefined) continue;
    if (inTheWay(yield* reservations.keptOf(record.id), days, {}).length > 0) continue;
    found.push(record);
    if (found.length === MOST_NAMED) break;
  }
  return found;
}

/** Which bits would do, as a sentence. */
export function describeInstead(free: readonly BitRecord[]): string {
  if (free.length === 0) return "No other bit like it is free then.";
  return `Free then, and alike: ${free.map(({ id, name }) => `${name} (${id})`).join(", ")}.`;
}

function isSame(one: unknown, other: unknown): boolean {
  if (typeof one === "number" && typeof other === "number") return Math.abs(one - other) <= SAME_SIZE;
  return JSON.stringify(one) === JSON.stringify(other);
}
