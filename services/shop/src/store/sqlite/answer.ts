import type { Database as Sqlite } from "better-sqlite3";
import { is, Param, Placeholder } from "drizzle-orm";
import { SQLiteSyncDialect } from "drizzle-orm/sqlite-core";
import type { Query, Question, Values } from "../query.ts";
import type { RawRow } from "../readers.ts";
import { driverValue, SQLITE_DIALECT } from "./dialect.ts";

/** Answers a question at once: also inside a transaction, which must not wait. */
export type AnswerNow = <Result>(question: Question<Result>) => Result;

/** The rows of one query for values. */
export type Rows = (values: Values) => readonly RawRow[];

const renderer = new SQLiteSyncDialect();

/** Answers questions from a connection. Each query is prepared when it is first asked, and asked `through` what may remember. */
export function answersFrom(sqlite: Sqlite, through: (rows: Rows) => Rows = (rows) => rows): AnswerNow {
  const prepared = new WeakMap<Query<unknown>, Rows>();
  return (question) => {
    let next = question.next();
    while (next.done !== true) {
      const { query, values } = next.value;
      let rows = prepared.get(query);
      if (rows === undefined) {
        rows = through(preparedRows(sqlite, query));
        prepared.set(query, rows);
      }
      next = question.next(rows(values));
    }
    return next.value;
  };
}

function preparedRows(sqlite: Sqlite, query: Query<unknown>): Rows {
  const { sql, params } = renderer.sqlToQuery(query.build(SQLITE_DIALECT).getSQL());
  const statement = sqlite.prepare<unknown[], unknown[]>(sql).raw();
  const values = params.map(valueIn);
  return (given) => statement.all(...values.map((read) => read(given)));
}

/** What stands at one place of a statement: a given value by its name, or one that never changes. */
function valueIn(param: unknown): (given: Values) => unknown {
  const place = is(param, Param) ? param.value : param;
  if (!is(place, Placeholder)) return () => param;
  const name: unknown = place.name;
  return (given) => driverValue(given[String(name)]);
}
