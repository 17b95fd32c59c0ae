import { eq, sql } from "drizzle-orm";
import type { BitRecord } from "../bits/schema.ts";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordReads, toRecord } from "../store/record-reads.ts";
import { bits, places } from "../store/tables/rack.ts";
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

/** What is asked of places inside a transaction, where nothing may wait. */
export type PlaceQueries = {
  readonly isThere: (placeId: string) => boolean;
  /** Whether a bit is in it or belongs there, or another place is inside it. */
  readonly isUsed: (placeId: string) => boolean;
};

export function placeQueries(database: Database): PlaceQueries {
  const id = sql.placeholder("id");
  const there = database.select({ id: places.id }).from(places).where(eq(places.id, id)).prepare();
  const bitAt = (field: "homePlaceId" | "placeId") =>
    database.select({ id: bits.id }).from(bits).where(eq(bits[field], id)).limit(1).prepare();
  const inside = database.select({ id: places.id }).from(places).where(eq(places.insideId, id)).limit(1);
  const uses = [bitAt("homePlaceId"), bitAt("placeId"), inside.prepare()];
  return {
    isThere: (placeId) => there.get({ id: placeId }) !== undefined,
    isUsed: (placeId) => uses.some((query) => query.get({ id: placeId }) !== undefined),
  };
}

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
