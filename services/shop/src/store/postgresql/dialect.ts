import { and, type SQL, sql } from "drizzle-orm";
import type { Dialect, Search } from "../dialect.ts";
import type { Kind } from "../kind.ts";
import type { Match, Value } from "../values.ts";

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
  found: inOrderOfNumber,
};

/** So many rows are looked through, and so many hits of the index sorted, in some milliseconds. */
const NEAR_ROWS = sql.raw("2000");
const FEW_HITS = sql.raw("10000");

/**
 * The index of words knows no order. What many rows have is found among the next rows of the table. Else the index is asked, how
 * often it finds something told by nobody beforehand, so that the planner cannot guess wrong: few hits are sorted, and for many the
 * table is gone through in order until there are enough.
 */
function inOrderOfNumber(kind: Kind, { columns, match, conditions, afterNumber, most }: Search): SQL {
  const { table } = kind;
  const number = kind.column("number");
  const terms = sql`${table}.${sql.identifier("terms")}`;
  const isAfter = sql`${number} > ${afterNumber}`;
  const rest = and(sql`TRUE`, ...conditions);
  const isNear = sql`(SELECT count(*) FROM near) >= ${most}`;
  const areFew = sql`(SELECT count(*) FROM hits) <= ${FEW_HITS}`;
  return sql`WITH near (number) AS MATERIALIZED (
      SELECT ${number} FROM (SELECT * FROM ${table} WHERE ${isAfter} ORDER BY ${number} LIMIT ${NEAR_ROWS}) AS ${table}
      WHERE ${terms} @@ ${match}::tsquery AND ${rest} ORDER BY ${number} LIMIT ${most}
    ), matches (number) AS MATERIALIZED (
      SELECT ${number} FROM ${table} WHERE ${terms} @@ (SELECT ${match}::tsquery) AND ${isAfter}
    ), hits (number) AS MATERIALIZED (
      SELECT matches.number FROM matches WHERE NOT ${isNear} LIMIT ${FEW_HITS} + 1
    ), chosen (number) AS MATERIALIZED (
      (SELECT near.number FROM near WHERE ${isNear})
      UNION ALL
      (SELECT ${number} FROM (SELECT hits.number AS hit FROM hits WHERE NOT ${isNear} AND ${areFew} ORDER BY hit) AS sorted
        JOIN ${table} ON ${number} = sorted.hit WHERE ${rest} ORDER BY ${number} LIMIT ${most})
      UNION ALL
      (SELECT ${number} FROM ${table} WHERE NOT ${isNear} AND NOT ${areFew}
        AND (${terms} @@ ${match}::tsquery) IS TRUE AND ${isAfter} AND ${rest} ORDER BY ${number} LIMIT ${most})
    ) SELECT ${columns} FROM ${table} WHERE ${number} IN (SELECT chosen.number FROM chosen) ORDER BY ${number}`;
}

/** A value as the driver takes it. */
export function driverValue(value: Value): unknown {
  if (value === undefined) return null;
  if (typeof value !== "object" || value === null || Buffer.isBuffer(value)) return value;
  return "list" in value ? value.list : matchText(value.match);
}

const WORD = "w";
const FACET = "f";

/** What is looked for as a `tsquery`: all words, and one of each list. */
function matchText({ words, anyOfWords = [], anyOfFacets, except = [] }: Match): string {
  const wanted = [
    ...words.map((word) => quoted(WORD, word)),
    ...anyOfWords.map((each) => anyOf(WORD, each)),
    ...anyOfFacets.map((each) => anyOf(FACET, each)),
  ].join(" & ");
  return [`(${wanted})`, ...except.map((each) => `!(${matchText(each)})`)].join(" & ");
}

function anyOf(sort: string, terms: readonly string[]): string {
  return `(${terms.map((term) => quoted(sort, term)).join(" | ")})`;
}

function quoted(sort: string, term: string): string {
  return `'${sort}${term.replaceAll(/['\\]/g, "")}'`;
}
