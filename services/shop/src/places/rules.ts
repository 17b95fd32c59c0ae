import { bitKind } from "../bits/kind.ts";
import type { BitRecord } from "../bits/schema.ts";
import { isChangeOf } from "../store/changes.ts";
import { type Change, ConflictError } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { placeKind } from "./kind.ts";
import { places } from "./reads.ts";

const PLACE_FIELDS = ["homePlaceId", "placeId"] as const;

/**
 * What routes have seen must still be so when it is written: a place that is removed is empty, and one that a bit is put in
 * exists. Throws ConflictError otherwise.
 */
export function* placesAreKept(changes: readonly Change[]): Question<readonly Change[]> {
  for (const change of changes) {
    if (isChangeOf(change, placeKind) && change.action === "remove" && (yield* places.isUsed(change.id))) {
      throw new ConflictError(placeKind, change.id);
    }
    if (!isChangeOf(change, bitKind) || !("record" in change)) continue;
    const changed = change.action === "replace" ? change.changed : undefined;
    for (const id of placesNamed(change.record, changed)) {
      if ((yield* places.find(id)) === undefined) throw new ConflictError(placeKind, id);
    }
  }
  return [];
}

/** The places that a bit names in fields that changed. */
function placesNamed(record: BitRecord, changed: readonly string[] | undefined): Set<string> {
  const named = PLACE_FIELDS.filter((field) => changed?.includes(field) ?? true);
  return new Set(named.flatMap((field) => record[field] ?? []));
}
