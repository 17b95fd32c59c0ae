import { and, sql } from "drizzle-orm";
import type { Dialect } from "../dialect.ts";
import type { Match, Value } from "../values.ts";

/** So many hits are sorted sooner than the table is gone through in order. */
const MOST_SORTED = 2000;

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
  // Its index of words knows no order: few hits are sorted, and for many the table is gone through in order until there are enough.
  found: (kind, { columns, match, conditions, afterNumber, most }) => {
    const { table } = kind;
    const number = kind.column("number");
    const isFound = sql`${table}.${sql.identifier("terms")} @@ ${match}::tsquery`;
    const rest = [sql`${number} > ${afterNumber}`, ...conditions];
    const few = sql.raw(String(MOST_SORTED));
    return sql`WITH hits (number) AS MATERIALIZED (
        SELECT ${number} FROM ${table} WHERE ${and(isFound, ...rest)} LIMIT ${few} + 1
      )
      (SELECT ${columns} FROM ${table} WHERE (SELECT count(*) FROM hits) <= ${few}
        AND ${number} IN (SELECT hits.number FROM hits ORDER BY hits.number LIMIT ${most}) ORDER BY ${number})
      UNION ALL
      (SELECT ${columns} FROM ${table} WHERE (SELECT count(*) FROM hits) > ${few}
        AND ${and(sql`(${isFound}) IS TRUE`, ...rest)} ORDER BY ${number} LIMIT ${most})`;
  },
};

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
