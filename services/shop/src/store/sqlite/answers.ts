import type { Database as Sqlite } from "better-sqlite3";
import type { KeptAnswer } from "../port.ts";

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
