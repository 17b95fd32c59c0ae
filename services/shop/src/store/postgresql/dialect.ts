import { sql } from "drizzle-orm";
import type { Dialect } from "../dialect.ts";
import type { Value } from "../values.ts";
import { foundInBlocks } from "./found-in-blocks.ts";
import { matchParts } from "./match-parts.ts";

/** PostgreSQL's way of writing what engines write differently. Lists are given as arrays. */
export const POSTGRESQL_DIALECT: Dialect = {
  isIn: (value, list) => sql`${value} = ANY(${list})`,
  valuesOf: (list) => sql`SELECT unnest(${list}::text[])`,
  holds: (column, value) =>
    sql`EXISTS (SELECT 1 FROM json_array_elements_text(${column}) AS held (value) WHERE held.value = ${value})`,
  contains: (column, part) => sql`position(${part} IN folded(coalesce(${column}, ''))) > 0`,
  orderedBy: (column, letters) =>
    sql`substr(folded(coalesce(${column}, '')), 1, ${sql.raw(String(letters))})`,
  // Its planner has statistics, and no way to be told.
  byIndex: (table) => sql`${sql.identifier(table)}`,
  unindexed: (column) => sql`${column}`,
  found: foundInBlocks,
};

/** A value as the driver takes it. */
export function driverValue(value: Value): unknown {
  if (value === undefined) return null;
  if (typeof value !== "object" || value === null || Buffer.isBuffer(value)) return value;
  return "list" in value ? value.list : matchParts(value.match);
}
