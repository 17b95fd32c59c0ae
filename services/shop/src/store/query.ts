import { type SQL, type SQLWrapper, sql } from "drizzle-orm";
import { QueryBuilder } from "drizzle-orm/sqlite-core";
import type { Dialect } from "./dialect.ts";
import type { Kind, RecordOf } from "./kind.ts";
import {
  fieldsReader,
  type RawRow,
  recordReader,
  rowReader,
  type SelectedRow,
  type Selection,
} from "./readers.ts";
import type { Value } from "./values.ts";

/** A query that any engine can be asked. Each is prepared once, by its identity: make it once. */
export type Query<Row> = {
  readonly build: (dialect: Dialect) => SQLWrapper;
  readonly read: (row: RawRow) => Row;
};

/** The values of a query's placeholders. */
export type Values = { readonly [name: string]: Value };

/** One query with its values, waiting to be answered. */
export type Step = { readonly query: Query<unknown>; readonly values: Values };

/**
 * What somebody wants to know, as a generator that yields queries and is resumed with their rows. The same code is answered at
 * once inside a SQLite transaction and with waiting by an engine elsewhere.
 */
export type Question<Answer> = Generator<Step, Answer, readonly RawRow[]>;

/** An answer that has to be looked up, or one that is known already. */
export type Askable<Answer> = Question<Answer> | Answer;

type From<Chosen extends Selection> = ReturnType<typeof selectionOf<Chosen>>;

const builder = new QueryBuilder();

/** A place in a query for a value that is given each time it is asked. */
export function given(name: string) {
  return sql.placeholder(name);
}

/** A query for whole records of a kind. `narrow` adds its conditions, its order and its limit. */
export function recordQuery<K extends Kind>(
  kind: K,
  narrow: (rows: ReturnType<typeof rowsOf>, dialect: Dialect) => SQLWrapper,
): Query<RecordOf<K>> {
  return { build: (dialect) => narrow(rowsOf(kind), dialect), read: recordReader(kind) };
}

/** A query for some fields of a kind's records. */
export function fieldsQuery<K extends Kind, const Field extends keyof RecordOf<K> & string>(
  kind: K,
  fields: readonly Field[],
  narrow: (rows: ReturnType<typeof rowsOf>, dialect: Dialect) => SQLWrapper,
): Query<Pick<RecordOf<K>, Field>> {
  return { build: (dialect) => narrow(rowsOf(kind, fields), dialect), read: fieldsReader(kind, fields) };
}

/** A query for some columns. `build` says where they come from. */
export function rowQuery<Chosen extends Selection>(
  chosen: Chosen,
  build: (selection: From<Chosen>, dialect: Dialect) => SQLWrapper,
): Query<SelectedRow<Chosen>> {
  return { build: (dialect) => build(selectionOf(chosen), dialect), read: rowReader(chosen) };
}

/** The columns of a kind's records in the order in which they are read, for a query that is written out. */
export function columnList(kind: Kind): SQL {
  return sql.join([...kind.columns.values()], sql`, `);
}

/** Every row that a query finds. */
export function* all<Row>(query: Query<Row>, values: Values = {}): Question<Row[]> {
  const rows = yield { query, values };
  return rows.map(query.read);
}

/** The first row that a query finds. */
export function* first<Row>(query: Query<Row>, values: Values = {}): Question<Row | undefined> {
  const [row] = yield { query, values };
  return row === undefined ? undefined : query.read(row);
}

/** An answer that may be known already, as a question. */
export function asked<Answer>(askable: Askable<Answer>): Question<Answer> {
  return isQuestion(askable) ? askable : known(askable);
}

/** An answer that nothing has to be looked up for. */
// biome-ignore lint/correctness/useYield: it asks nothing.
function* known<Answer>(answer: Answer): Question<Answer> {
  return answer;
}

function isQuestion<Answer>(askable: Askable<Answer>): askable is Question<Answer> {
  return typeof askable === "object" && askable !== null && "next" in askable && Symbol.iterator in askable;
}

function rowsOf(kind: Kind, fields: readonly string[] = [...kind.columns.keys()]) {
  return builder
    .select(Object.fromEntries(fields.map((field) => [field, kind.column(field)])))
    .from(kind.table);
}

function selectionOf<Chosen extends Selection>(chosen: Chosen) {
  return builder.select({ ...chosen });
}
