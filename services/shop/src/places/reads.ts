import { sql } from "drizzle-orm";
import type { BitRecord } from "../bits/schema.ts";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordReads, toRecord } from "../store/record-reads.ts";
import { bits } from "../store/tables/rack.ts";
import type { PlaceRecord } from "./schema.ts";

export type PlaceReads = RecordReads<"place"> & {
  /** The place itself and everything inside it, to any depth. */
  readonly idsWithin: (placeId: string) => Promise<string[]>;
  /** From the place outward to the outermost one that it is inside. */
  readonly outward: (placeId: string) => Promise<PlaceRecord[]>;
  /** Bits that belong in these places or were last seen in them. */
  readonly bitsOf: (placeIds: readonly string[], most: number) => Promise<BitRecord[]>;
};

/** Places nest a few deep: what is inside this many is refused, so that every chain can be looked through for rings. */
export const DEEPEST_PLACE = 50;

export function placeReads(database: Database): PlaceReads {
  const reads = recordReads(database, "place");

  async function outward(placeId: string): Promise<PlaceRecord[]> {
    const chain: PlaceRecord[] = [];
    let id: string | undefined = placeId;
    while (id !== undefined && chain.length < DEEPEST_PLACE) {
      const place: PlaceRecord | undefined = await reads.find(id);
      if (place === undefined) break;
      chain.push(place);
      id = place.insideId;
    }
    return chain;
  }

  return {
    ...reads,
    outward,
    idsWithin: async (placeId) =>
      database
        .all<{ id: string }>(
          sql`WITH RECURSIVE within (id) AS (
                VALUES (${placeId}) UNION SELECT places.id FROM places JOIN within ON places.inside_id = within.id
              ) SELECT id FROM within`,
        )
        .map(({ id }) => id),
    bitsOf: async (placeIds, most) => {
      const asked = JSON.stringify(placeIds);
      return database
        .select()
        .from(bits)
        .where(
          sql`${bits.number} IN (
            SELECT number FROM bits WHERE home_place_id IN (SELECT value FROM json_each(${asked}))
            UNION SELECT number FROM bits WHERE place_id IN (SELECT value FROM json_each(${asked})))`,
        )
        .orderBy(bits.number)
        .limit(most)
        .all()
        .map((row) => toRecord("bit", row));
    },
  };
}
