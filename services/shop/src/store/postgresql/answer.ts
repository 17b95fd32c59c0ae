import { PgDialect } from "drizzle-orm/pg-core";
import type { Pool, PoolClient } from "pg";
import { placeIn } from "../places-in-statements.ts";
import type { Query, Question, Step, Values } from "../query.ts";
import type { RawRow } from "../readers.ts";
import type { Answer } from "../store.ts";
import { UnavailableError } from "../unavailable-error.ts";
import { connectionOf } from "./connection.ts";
import { driverValue, POSTGRESQL_DIALECT } from "./dialect.ts";
import { inOrder } from "./in-order.ts";

/** A query as the server prepares it. */
export type Prepared = {
  readonly name: string;
  readonly text: string;
  readonly values: readonly ((given: Values) => unknown)[];
};

const renderer = new PgDialect();
const prepared = new WeakMap<Query<unknown>, Prepared>();
let names = 0;

const BEGIN = "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY";

/** So often a function's questions have taken one query before the next one is taken to. */
const ALONE_BEFORE = 3;
/** How often the questions of a function have taken one query; never again after one that took more. */
const alone = new WeakMap<object, number>();

/**
 * Answers each question as everything is at one moment, however many queries it takes. A single query sees one moment by itself: no
 * transaction is begun for a question that is likely to take no more.
 */
export function answersFrom(pool: Pool): Answer {
  return async (question) => {
    const first = question.next();
    if (first.done === true) return first.value;
    const client = await connectionOf(pool);
    let broken: Error | undefined;
    try {
      return await answered(client, question, first.value);
    } catch (error) {
      await client.query("ROLLBACK").catch((lost: Error) => {
        broken = lost;
      });
      throw broken === undefined ? error : new UnavailableError(error);
    } finally {
      client.release(broken);
    }
  };
}

async function answered<Result>(
  client: PoolClient,
  question: Question<Result>,
  first: Step,
): Promise<Result> {
  // What all questions of one generator function have in common.
  const asker: object = Object.getPrototypeOf(question);
  const timesAlone = alone.get(asker) ?? 0;
  const isLikelyAlone = timesAlone >= ALONE_BEFORE;
  // Sent together with the first query: it costs no wait of its own.
  const begun = isLikelyAlone ? undefined : client.query(BEGIN);
  const [, rows] = await inOrder<[unknown, readonly RawRow[]]>([begun, rowsOf(client, first)]);
  const next = question.next(rows);
  alone.set(asker, next.done === true ? timesAlone + 1 : Number.NEGATIVE_INFINITY);
  if (isLikelyAlone) {
    if (next.done === true) return next.value;
    await requireSame(client, first, rows);
  }
  const result = await rest(client, question, next);
  // It only read: who comes next with this connection waits for its end, and finds out when it is lost.
  client.query("COMMIT").catch(() => undefined);
  return result;
}

/**
 * Begins a transaction in which a query finds what it found before. Throws an UnavailableError when somebody wrote between the two. That
 * can happen once for each function and process: from then on its questions begin with a transaction. The question has gone on with
 * what it was given and cannot be asked again from here; whoever asked can, at once.
 */
async function requireSame(client: PoolClient, step: Step, found: readonly RawRow[]): Promise<void> {
  const [, again] = await inOrder<[unknown, readonly RawRow[]]>([client.query(BEGIN), rowsOf(client, step)]);
  if (JSON.stringify(again) !== JSON.stringify(found))
    throw new UnavailableError("what was read has changed meanwhile", "STORE_BUSY");
}

async function rest<Result>(
  client: PoolClient,
  question: Question<Result>,
  next: IteratorResult<Step, Result>,
): Promise<Result> {
  let step = next;
  while (step.done !== true) step = question.next(await rowsOf(client, step.value));
  return step.value;
}

function rowsOf(client: PoolClient, { query, values }: Step): Promise<readonly RawRow[]> {
  return rowsOfPrepared(client, preparedFor(query), values);
}

export async function rowsOfPrepared(
  client: PoolClient,
  { name, text, values: places }: Prepared,
  values: Values,
): Promise<readonly RawRow[]> {
  const result = await client.query<unknown[]>({
    name,
    text,
    values: places.map((read) => read(values)),
    rowMode: "array",
  });
  return result.rows;
}

/** Each query is rendered when it is first asked, and prepared once by each connection. */
export function preparedFor(query: Query<unknown>): Prepared {
  const known = prepared.get(query);
  if (known !== undefined) return known;
  const { sql: text, params } = renderer.sqlToQuery(query.build(POSTGRESQL_DIALECT).getSQL());
  names += 1;
  const made = {
    name: `question_${names}`,
    text,
    values: params.map((param) => placeIn(param, driverValue)),
  };
  prepared.set(query, made);
  return made;
}
