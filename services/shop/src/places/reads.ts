import { eq, sql } from "drizzle-orm";
import { bitKind } from "../bits/kind.ts";
import type { BitRecord } from "../bits/schema.ts";
import { all, fieldsQuery, first, given, type Question, recordQuery } from "../store/query.ts";
import { recordQueries } from "../store/record-queries.ts";
import { placeKind } from "./kind.ts";
import type { PlaceRecord } from "./schema.ts";

/** Places nest a few deep: what is inside this many is refused, so that every chain can be looked through for rings. */
export const DEEPEST_PLACE = 50;

const records = recordQueries(placeKind);

export const places = {
  ...records,
  /** The place itself and everything inside it, to any depth, the outer ones first. */
  idsWithin,
  /** From the place outward to the outermost one that it is inside. */
  outward,
  /** Bits that belong in these places or were last seen in them. */
  bitsOf,
  /** Whether a bit is in it or belongs there, or another place is inside it. */
  isUsed,
};

const within = fieldsQuery(placeKind, ["id", "insideId"], () => {
  const { table } = placeKind;
  const id = placeKind.column("id");
  const insideId = placeKind.column("insideId");
  return sql`WITH RECURSIVE within (id, inside_id) AS (
      SELECT ${id}, ${insideId} FROM ${table} WHERE ${id} = ${given("placeId")}
      UNION SELECT ${id}, ${insideId} FROM ${table} JOIN within ON ${insideId} = within.id
    ) SELECT id, inside_id FROM within ORDER BY id`;
});

const number = bitKind.column("number");
const bitsIn = recordQuery(bitKind, (rows, dialect) => {
  const numbersBy = (field: "homePlaceId" | "placeId") =>
    sql`SELECT ${number} FROM ${bitKind.table} WHERE ${dialect.isIn(bitKind.column(field), given("placeIds"))}`;
  return rows
    .where(sql`${number} IN (${numbersBy("homePlaceId")} UNION ${numbersBy("placeId")})`)
    .orderBy(number)
    .limit(given("most"));
});

const bitAt = (field: "homePlaceId" | "placeId") =>
  fieldsQuery(bitKind, ["id"], (rows) => rows.where(eq(bitKind.column(field), given("placeId"))).limit(1));
const placeInside = fieldsQuery(placeKind, ["id"], (rows) =>
  rows.where(eq(placeKind.column("insideId"), given("placeId"))).limit(1),
);
const users = [bitAt("homePlaceId"), bitAt("placeId"), placeInside];

function* idsWithin(placeId: string): Question<string[]> {
  const found = yield* all(within, { placeId });
  const inside = new Map<string, string[]>();
  for (const { id, insideId = "" } of found) inside.set(insideId, [...(inside.get(insideId) ?? []), id]);
  const ids = new Set([placeId]);
  // A set goes on to what is added while it is gone through: level by level, each in order of age.
  for (const outer of ids) for (const id of inside.get(outer) ?? []) ids.add(id);
  return found.length === 0 ? [] : [...ids];
}

function* outward(placeId: string): Question<PlaceRecord[]> {
  const chain: PlaceRecord[] = [];
  let id: string | undefined = placeId;
  while (id !== undefined && chain.length < DEEPEST_PLACE) {
    const place: PlaceRecord | undefined = yield* records.find(id);
    if (place === undefined) break;
    chain.push(place);
    id = place.insideId;
  }
  return chain;
}

function* bitsOf(placeIds: readonly string[], most: number): Question<BitRecord[]> {
  return yield* all(bitsIn, { placeIds: { list: placeIds }, most });
}

function* isUsed(placeId: string): Question<boolean> {
  for (const query of users) if ((yield* first(query, { placeId })) !== undefined) return true;
  return false;
}
