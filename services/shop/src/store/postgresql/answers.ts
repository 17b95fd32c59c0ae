import type { PoolClient } from "pg";
import type { KeptAnswer } from "../port.ts";

/**
 * Keeps an answer; false when an answer to this request is kept already. What has expired by `at` is forgotten first. Call
 * inside the transaction that makes the changes.
 */
export async function keepAnswer(client: PoolClient, answer: KeptAnswer, at: string): Promise<boolean> {
  const { scope, idempotencyKey, fingerprint, status, headers, body, expiresAt } = answer;
  const [, kept] = await Promise.all([
    client.query("DELETE FROM answers WHERE expires_at <= $1", [at]),
    client.query(
      `INSERT INTO answers (scope, idempotency_key, fingerprint, status, headers, body, expires_at)
       VALUES ($1, $2, $3, $4, $5, $6, $7) ON CONFLICT DO NOTHING`,
      [scope, idempotencyKey, fingerprint, status, JSON.stringify(headers), body, expiresAt],
    ),
  ]);
  return kept.rowCount === 1;
}
