import { and, eq, lte, sql } from "drizzle-orm";
import type { Database } from "./database.ts";
import type { KeptAnswer } from "./port.ts";
import { answers } from "./tables/history.ts";

export type Answers = {
  readonly find: (scope: string, idempotencyKey: string) => Promise<KeptAnswer | undefined>;
  /**
   * False where an answer to this request is kept already; what has expired by `at` is forgotten first.
   * Call inside the transaction that makes the changes.
   */
  readonly keep: (answer: KeptAnswer, at: string) => boolean;
};

/** The kept answers to creating requests. */
export function keptAnswers(database: Database): Answers {
  const isThis = and(
    eq(answers.scope, sql.placeholder("scope")),
    eq(answers.idempotencyKey, sql.placeholder("idempotencyKey")),
  );
  const find = database.select().from(answers).where(isThis).prepare();
  const insert = database
    .insert(answers)
    .values({
      scope: sql.placeholder("scope"),
      idempotencyKey: sql.placeholder("idempotencyKey"),
      fingerprint: sql.placeholder("fingerprint"),
      status: sql.placeholder("status"),
      headers: sql.placeholder("headers"),
      body: sql.placeholder("body"),
      expiresAt: sql.placeholder("expiresAt"),
    })
    .onConflictDoNothing()
    .prepare();
  const forget = database
    .delete(answers)
    .where(lte(answers.expiresAt, sql.placeholder("at")))
    .prepare();
  return {
    find: async (scope, idempotencyKey) => find.get({ scope, idempotencyKey }),
    keep: (answer, at) => {
      forget.run({ at });
      return insert.run(answer).changes === 1;
    },
  };
}
