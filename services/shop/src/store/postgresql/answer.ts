import { PgDialect } from "drizzle-orm/pg-core";
import type { Pool, PoolClient } from "pg";
import { placeIn } from "../places-in-statements.ts";
import type { Query, Question, Step, Values } from "../query.ts";
import type { RawRow } from "../readers.ts";
import type { Answer } from "../store.ts";
import { UnavailableError } from "../unavailable-error.ts";
import { connectionOf } from "./connection.ts";
import { driverValue, POSTGRESQL_DIALECT } from "./dialect.ts";

/** A query as the server prepares it. */
export type Prepared = {
  /** Absent for a statement that the server plans again each time. */
  readonly name?: string;
  readonly text: string;
  readonly values: readonly ((given: Values) => unknown)[];
};

const renderer = new PgDialect();
const SEARCH = /::tsquery\b/;
const prepared = new WeakMap<Query<unknown>, Prepared>();
let names = 0;

/** Answers each question as everything is at one moment, however many queries it takes. */
export function answersFrom(pool: Pool): Answer {
  return async (question) => {
    const first = question.next();
    if (first.done === true) return first.value;
    const client = await connectionOf(pool);
    let broken: Error | undefined;
    try {
      // Sent together with the first query: it costs no wait of its own.
      const [, rows] = await Promise.all([
        client.query("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY"),
        rowsOf(client, first.value),
      ]);
      const answer = await rest(client, question, question.next(rows));
      // It only read: who comes next with this connection waits for its end, and finds out when it is lost.
      client.query("COMMIT").catch(() => undefined);
      return answer;
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
    ...(name !== undefined && { name }),
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
    // How a search is best gone about depends on its words.
    ...(!SEARCH.test(text) && { name: `question_${names}` }),
    text,
    values: params.map((param) => placeIn(param, driverValue)),
  };
  prepared.set(query, made);
  return made;
}
