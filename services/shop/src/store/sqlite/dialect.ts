import { and, sql } from "drizzle-orm";
import type { Dialect } from "../dialect.ts";
import type { Match, Value } from "../values.ts";

/** SQLite's way of writing what engines write differently. Lists are given as JSON. */
export const SQLITE_DIALECT: Dialect = {
  isIn: (value, list) => sql`${value} IN (SELECT value FROM json_each(${list}))`,
  valuesOf: (list) => sql`SELECT value FROM json_each(${list})`,
  holds: (column, value) => sql`EXISTS (SELECT 1 FROM json_each(${column}) WHERE value = ${value})`,
  contains: (column, part) => sql`instr(folded(${column}), ${part}) > 0`,
  orderedBy: (column, letters) => sql`substr(folded(${column}), 1, ${sql.raw(String(letters))})`,
  byIndex: (table, index) => sql`${sql.identifier(table)} INDEXED BY ${sql.identifier(index)}`,
  unindexed: (column) => sql`+${column}`,
  // The index is read in the order of its row numbers, so that a page costs what is on it.
  found: (kind, { columns, match, conditions, afterNumber, most }) => {
    const index = sql.identifier(`${kind.type}_index`);
    const [inIndex, number] = [sql`${index}.rowid`, kind.column("number")];
    const after = [sql`${inIndex} > ${afterNumber}`, sql`${number} > ${afterNumber}`];
    return sql`SELECT ${columns} FROM ${kind.table} INNER JOIN ${index} ON ${number} = ${inIndex}
      WHERE ${and(sql`${index} MATCH ${match}`, ...after, ...conditions)} ORDER BY ${inIndex} LIMIT ${most}`;
  },
};

/** A value as the driver takes it. */
export function driverValue(value: Value): string | number | Buffer | null {
  if (value === undefined || value === null) return null;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (typeof value !== "object" || Buffer.isBuffer(value)) return value;
  return "list" in value ? JSON.stringify(value.list) : matchText(value.match);
}

/** What is looked for as a query of the full-text index (FTS5): all words, and one of each list. */
function matchText({ words, anyOfWords = [], anyOfFacets, except = [] }: Match): string {
  const wanted = [
    ...words.map((word) => `words : ${quoted(word)}`),
    ...anyOfWords.map((each) => `words : (${each.map(quoted).join(" OR ")})`),
    ...anyOfFacets.map((facets) => `facets : (${facets.map(quoted).join(" OR ")})`),
  ].join(" AND ");
  return [wanted, ...except.map(matchText)].map((each) => `(${each})`).join(" NOT ");
}

function quoted(word: string): string {
  return `"${word.replaceAll('"', "")}"`;
}
