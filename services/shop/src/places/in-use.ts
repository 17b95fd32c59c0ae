import type { BitRecord } from "../bits/schema.ts";
import { GroundMoved } from "../store/commit.ts";
import type { Change } from "../store/port.ts";
import type { PlaceQueries } from "./reads.ts";

const PLACE_FIELDS = ["homePlaceId", "placeId"] as const;

/**
 * Holds what routes have looked up to be so still when it is written: a place that goes is empty, and one that a bit is put in is
 * there. Throws GroundMoved otherwise. Call inside the transaction, after the changes.
 */
export function placesKept({ isThere, isUsed }: PlaceQueries): (changes: readonly Change[]) => void {
  return (changes) => {
    for (const change of changes) {
      if (change.type === "place" && change.action === "remove" && isUsed(change.id)) {
        throw new GroundMoved("place", change.id);
      }
      if (change.type !== "bit" || change.action === "remove") continue;
      for (const id of placesPutIn(change)) if (!isThere(id)) throw new GroundMoved("place", id);
    }
  };
}

/** The places that a change of a bit names anew. */
function placesPutIn(change: Extract<Change, { readonly record: BitRecord }>): Set<string> {
  const { record } = change;
  const changed = change.action === "replace" ? change.changed : undefined;
  const named = PLACE_FIELDS.filter((field) => changed?.includes(field) ?? true);
  return new Set(named.flatMap((field) => record[field] ?? []));
}
