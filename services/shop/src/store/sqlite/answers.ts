import type { Database as Sqlite } from "better-sqlite3";
import { and, eq } from "drizzle-orm";
import { answers } from "../history-tables.ts";
import type { KeptAnswer } from "../port.ts";
import { first, given, type Question, rowQuery } from "../query.ts";

const { scope, idempotencyKey, fingerprint, status, headers, body, expiresAt } = answers;

const kept = rowQuery({ scope, idempotencyKey, fingerprint, status, headers, body, expiresAt }, (selection) =>
  selection.from(answers).where(and(eq(scope, given("scope")), eq(idempotencyKey, given("idempotencyKey")))),
);

/** The answer that was kept for a request. */
export function findAnswer(scope: string, idempotencyKey: string): Question<KeptAnswer | undefined> {
  return first(kept, { scope, idempotencyKey });
}

/**
 * Keeps an answer; false when an answer to this request is kept already. What has expired by `at` is forgotten first. Call
 * inside the transaction that makes the changes.
 */
export function answerKeeper(sqlite: Sqlite): (answer: KeptAnswer, at: string) => boolean {
  const insert = sqlite.prepare(
    `INSERT INTO answers (scope, idempotency_key, fingerprint, status, headers, body, expires_at)
     VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING`,
  );
  const forget = sqlite.prepare("DELETE FROM answers WHERE expires_at <= ?");
  return (answer, at) => {
    forget.run(at);
    const { scope, idempotencyKey, fingerprint, status, headers, body, expiresAt } = answer;
    const row = [scope, idempotencyKey, fingerprint, status, JSON.stringify(headers), body, expiresAt];
    return insert.run(row).changes === 1;
  };
}
