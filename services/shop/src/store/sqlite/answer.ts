import type { Database as Sqlite } from "better-sqlite3";
import { SQLiteSyncDialect } from "drizzle-orm/sqlite-core";
import { placeIn } from "../places-in-statements.ts";
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

function foundBy(sqlite: Sqlite, through: (rows: Rows) => Rows): Found {
  const known = new WeakMap<Query<unknown>, Rows>();
  return ({ query, values }) => {
    let rows = known.get(query);
    if (rows === undefined) {
      rows = through(rowsOf(sqlite, query));
      known.set(query, rows);
    }
    return rows(values);
  };
}

const prepared = new WeakMap<Sqlite, WeakMap<Query<unknown>, Rows>>();

/** Each query is prepared when it is first asked, once for a connection, whoever asks. */
function rowsOf(sqlite: Sqlite, query: Query<unknown>): Rows {
  const onConnection = prepared.get(sqlite) ?? new WeakMap<Query<unknown>, Rows>();
  prepared.set(sqlite, onConnection);
  const rows = onConnection.get(query) ?? preparedRows(sqlite, query);
  onConnection.set(query, rows);
  return rows;
}

function preparedRows(sqlite: Sqlite, query: Query<unknown>): Rows {
  const { sql, params } = renderer.sqlToQuery(query.build(SQLITE_DIALECT).getSQL());
  const statement = sqlite.prepare<unknown[], unknown[]>(sql).raw();
  const values = params.map((param) => placeIn(param, driverValue));
  return (given) => statement.all(...values.map((read) => read(given)));
}
