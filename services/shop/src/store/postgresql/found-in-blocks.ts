import { and, type SQL, sql } from "drizzle-orm";
import type { Search } from "../dialect.ts";
import type { Kind } from "../kind.ts";
import { separateParts } from "./match-parts.ts";

/** The blocks that `blocks_of` in the migrations knows: of 2⁷ numbers at level 0, and of eight times as many at each level above. */
const LOWEST_POWER = sql.raw("7");
const POWERS_OF_LEVEL = sql.raw("3");
const TOP_LEVEL = sql.raw("5");
/** With more hits than so many pages a window is narrowed. */
const PAGES_READ = sql.raw("5");

/**
 * The rows that words and facets find, in order of their number. The index of words knows no order, but in which blocks of numbers a row
 * is. So it is asked for a window of numbers, and as long as too little was found, for the next one, which goes up to where blocks eight
 * times as large begin. When a window has many hits, the first ones on the disk say up to where the page can reach at most: it is asked
 * again up to there, and where the disk has another order, half as far. So a page costs about what is on it, in a small table as in a
 * large one, whether what is looked for is frequent or rare.
 */
export function foundInBlocks(kind: Kind, search: Search): SQL {
  const { columns, match, conditions, afterNumber, most } = search;
  const { table } = kind;
  const number = kind.column("number");
  const terms = sql`${table}.${sql.identifier("terms")}`;
  // Conditions by themselves, because the index goes from a hit of one to the next that another may have.
  const matches = Array.from(
    { length: separateParts(search.parts) },
    (_, index) => sql`${terms} @@ (SELECT (${match}::tsquery[])[${sql.raw(String(index + 1))}])`,
  );
  const found = and(
    ...matches,
    sql`blocks_of(${number}) && ${BLOCKS_OF_WINDOW}`,
    // Added to, so that the planner does not take to the table's own order, in which a window may be as long as the table.
    sql`${number} + 0 BETWEEN looked.first AND looked.last`,
    ...conditions,
  );
  // Without OFFSET the planner would ask the index once for each mention of the hits.
  return sql`WITH RECURSIVE looked (first, last, level, finest, found) AS (
      SELECT ${afterNumber}::bigint + 1, ${endOfWindow(sql`${afterNumber}::bigint + 1`, sql`0`)}, 0, 0, ARRAY[]::bigint[]
      UNION ALL
      SELECT
        CASE WHEN are_many THEN looked.first ELSE looked.last + 1 END,
        CASE WHEN are_many THEN least((SELECT hit FROM unnest(hits) AS hit ORDER BY hit OFFSET ${most} - 1 LIMIT 1),
            CASE WHEN looked.finest = 0 THEN (looked.first + looked.last) / 2 END)
          ELSE ${endOfWindow(sql`looked.last + 1`, sql`next_level`)} END,
        CASE WHEN are_many THEN looked.level ELSE next_level END,
        CASE WHEN are_many THEN 0 ELSE next_level END,
        CASE WHEN are_many THEN looked.found ELSE looked.found || hits END
      FROM looked
      CROSS JOIN LATERAL (
        SELECT CASE WHEN looked.finest < looked.level THEN looked.level ELSE least(looked.level + 1, ${TOP_LEVEL}) END AS next_level
      ) AS above
      CROSS JOIN LATERAL (SELECT ARRAY(
        SELECT ${number} FROM ${table} WHERE ${found} LIMIT ${most} * ${PAGES_READ} + 1
      ) AS hits OFFSET 0) AS asked
      CROSS JOIN LATERAL (SELECT cardinality(hits) > ${most} * ${PAGES_READ} AS are_many) AS counted
      WHERE cardinality(looked.found) < ${most} AND looked.first <= (SELECT max(${number}) FROM ${table})
    ) SELECT ${columns} FROM ${table} WHERE ${number} = ANY(ARRAY(
      SELECT unnest(latest.found) AS hit FROM (SELECT looked.found FROM looked ORDER BY looked.first DESC LIMIT 1) AS latest
      ORDER BY hit LIMIT ${most}
    )) ORDER BY ${number}`;
}

/** The last number before the next block of the level above begins. */
function endOfWindow(first: SQL, level: SQL): SQL {
  const power = powerOf(sql`${level} + 1`);
  return sql`((((${first}) >> ${power}) + 1) << ${power}) - 1`;
}

/** How many numbers a block of a level has, as a power of two. */
function powerOf(level: SQL): SQL {
  return sql`(${LOWEST_POWER} + ${POWERS_OF_LEVEL} * (${level}))`;
}

/**
 * The blocks from a window's first number to its last, as the index has them: at its level, and for what is left before the last number
 * at the levels below, down to its finest.
 */
const BLOCKS_OF_WINDOW = sql`ARRAY(
  SELECT generate_series(
    greatest(looked.first >> ${powerOf(sql`level`)}, looked.last >> ${powerOf(sql`level + 1`)} << ${POWERS_OF_LEVEL}),
    (looked.last >> ${powerOf(sql`level`)}) - (level > looked.finest)::int
  ) << ${POWERS_OF_LEVEL} | level FROM generate_series(looked.finest, looked.level) AS each (level)
)`;
