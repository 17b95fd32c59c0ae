import type { Database as Sqlite } from "better-sqlite3";
import { is, Param, Placeholder } from "drizzle-orm";
import { SQLiteSyncDialect } from "drizzle-orm/sqlite-core";
import type { Query, Question, Step, Values } from "../query.ts";
import type { RawRow } from "../readers.ts";
import { driverValue, SQLITE_DIALECT } from "./dialect.ts";
import type { Pieces } from "./pieces.ts";

/** Answers a question at once: also inside a transaction, which must not wait. */
export type AnswerNow = <Result>(question: Question<Result>) => Result;

/** The rows of one query for values. */
export type Rows = (values: Values) => readonly RawRow[];

const renderer = new SQLiteSyncDialect();

/** Answers a question query by query. */
export type AnswerInPieces = <Result>(question: Question<Result>) => Pieces<Result>;

type Found = (step: Step) => readonly RawRow[];

/** Answers questions from a connection. Each query is asked `through` what may remember. */
export function answersFrom(sqlite: Sqlite, through: (rows: Rows) => Rows = (rows) => rows): AnswerNow {
  const found = foundBy(sqlite, through);
  return (question) => {
    let next = question.next();
    while (next.done !== true) next = question.next(found(next.value));
    return next.value;
  };
}

/** The same in pieces: each query and what is made of its rows is one. */
export function piecesFrom(sqlite: Sqlite): AnswerInPieces {
  const found = foundBy(sqlite, (rows) => rows);
  return function* (question) {
    let next = question.next();
    while (next.done !== true) {
      next = question.next(found(next.value));
      yield;
    }
    return next.value;
  };
}

/** Each query is prepared when it is first asked. */
function foundBy(sqlite: Sqlite, through: (rows: Rows) => Rows): Found {
  const prepared = new WeakMap<Query<unknown>, Rows>();
  return ({ query, values }) => {
    let rows = prepared.get(query);
    if (rows === undefined) {
      rows = through(preparedRows(sqlite, query));
      prepared.set(query, rows);
    }
    return rows(values);
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
