import type { Database } from "../../services/shop/testing/database.ts";

/** What a database is made of, in words that fit both engines, sorted. */
export type Schema = {
  /** `table.column kind`, with `required` and `computed` where it is so. */
  readonly columns: readonly string[];
  /** `table (columns) where …`, with `unique` where it is so. */
  readonly indexes: readonly string[];
};

/** What both engines keep alike: SQLite has no truth values and no JSON. */
const KINDS: Readonly<Record<string, string>> = {
  TEXT: "text",
  INTEGER: "whole",
  REAL: "real",
  BLOB: "bytes",
  text: "text",
  json: "text",
  bigint: "whole",
  boolean: "whole",
  "double precision": "real",
  bytea: "bytes",
};

type Rows = Pick<Database, "rows">;

export async function schemaOfSqlite({ rows }: Rows): Promise<Schema> {
  const columns = await rows(
    `SELECT t.name AS "table", c.name AS name, c.type AS type, c."notnull" = 1 OR c.pk > 0 AS required, c.hidden > 0 AS computed
     FROM sqlite_schema AS t, pragma_table_xinfo(t.name) AS c
     WHERE t.type = 'table' AND t.name NOT LIKE 'sqlite_%' AND t.name NOT LIKE 'bit_index%'`,
  );
  const indexes = await rows(
    `SELECT t.name AS "table", i."unique" AS is_unique, coalesce(s.sql, '') AS sql,
       (SELECT group_concat(part, ', ') FROM (SELECT coalesce(x.name, '?') || CASE x."desc" WHEN 1 THEN ' desc' ELSE '' END AS part
          FROM pragma_index_xinfo(i.name) AS x WHERE x.key = 1 ORDER BY x.seqno)) AS parts
     FROM sqlite_schema AS t, pragma_index_list(t.name) AS i LEFT JOIN sqlite_schema AS s ON s.name = i.name
     WHERE t.type = 'table' AND t.name NOT LIKE 'bit_index%'
     UNION ALL SELECT t.name, 1, '', c.name FROM sqlite_schema AS t, pragma_table_info(t.name) AS c
     WHERE t.type = 'table' AND c.type = 'INTEGER' AND c.pk = 1 AND t.name NOT LIKE 'bit_index%'`,
  );
  return {
    columns: columns.map(shownColumn).sort(),
    indexes: indexes
      .map(({ table, is_unique, sql, parts }) => {
        const written = String(sql).replaceAll(/\s+/g, " ");
        // An expression has no name: what is between the outer brackets says what it is.
        const keys = String(parts).includes("?")
          ? (/ ON \w+ \((.*)\)/.exec(written)?.[1] ?? "")
          : String(parts);
        return shownIndex(String(table), is_unique === 1, keys, / WHERE (.*)$/i.exec(written)?.[1]);
      })
      .sort(),
  };
}

export async function schemaOfPostgresql({ rows }: Rows): Promise<Schema> {
  const columns = await rows(
    `SELECT table_name AS table, column_name AS name, data_type AS type, (is_nullable = 'NO')::int AS required,
       (is_generated = 'ALWAYS')::int AS computed
     FROM information_schema.columns WHERE table_schema = current_schema()`,
  );
  const indexes = await rows(
    `SELECT t.relname AS table, i.indisunique AS is_unique, pg_get_indexdef(i.indexrelid) AS sql
     FROM pg_index AS i JOIN pg_class AS t ON t.oid = i.indrelid WHERE t.relnamespace = current_schema()::regnamespace`,
  );
  return {
    columns: columns.map(shownColumn).sort(),
    indexes: indexes
      .map(({ table, is_unique, sql }) => {
        const [, keys = "", condition] =
          / USING \w+ \((.*?)\)(?: WITH \(.*?\))?(?: WHERE (.*))?$/.exec(String(sql)) ?? [];
        return shownIndex(String(table), is_unique === 1, keys, condition);
      })
      .sort(),
  };
}

function shownColumn({ table, name, type, required, computed }: Readonly<Record<string, unknown>>): string {
  const kind = KINDS[String(type)] ?? String(type);
  return [`${table}.${name} ${kind}`, required === 1 && "required", computed === 1 && "computed"]
    .filter((word) => word !== false)
    .join(" ");
}

function shownIndex(table: string, isUnique: boolean, keys: string, condition: string | undefined): string {
  const shown = `${table} (${plain(keys)})${condition === undefined ? "" : ` where ${plain(condition)}`}`;
  return isUnique ? `${shown} unique` : shown;
}

/** An expression without what one engine adds in writing it out: brackets, quotes of names, kinds of texts. */
function plain(sql: string): string {
  return sql
    .replaceAll("= ANY (ARRAY[", "IN (")
    .replaceAll(/::(text|double precision)/g, "")
    .replaceAll(/["()[\]]/g, "")
    .replaceAll(/\s+/g, " ")
    .replaceAll(/\s*<>\s*/g, " <> ")
    .toLowerCase()
    .trim();
}
