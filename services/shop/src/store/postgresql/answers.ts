import type { PoolClient } from "pg";
import { laterOf } from "../chain.ts";
import type { KeptAnswer } from "../port.ts";
import { inOrder } from "./in-order.ts";

/** An answer that is to be kept, and when. */
export type AnswerAt = readonly [answer: KeptAnswer, at: string];

const COLUMNS: readonly (readonly [name: string, type: string, of: (answer: KeptAnswer) => unknown])[] = [
  ["scope", "text", ({ scope }) => scope],
  ["idempotency_key", "text", ({ idempotencyKey }) => idempotencyKey],
  ["fingerprint", "text", ({ fingerprint }) => fingerprint],
  ["status", "bigint", ({ status }) => status],
  ["headers", "json", ({ headers }) => JSON.stringify(headers)],
  ["body", "text", ({ body }) => body],
  ["expires_at", "text", ({ expiresAt }) => expiresAt],
];

const NAMES = COLUMNS.map(([name]) => name).join(", ");
const ARRAYS = COLUMNS.map(([, type], index) => `$${index + 1}::${type}[]`).join(", ");
const INSERT = `INSERT INTO answers (${NAMES}) SELECT * FROM unnest(${ARRAYS})`;

const KEPT = `SELECT kept.scope, kept.idempotency_key FROM answers AS kept
  JOIN unnest($1::text[], $2::text[], $3::text[]) AS given (scope, idempotency_key, at) USING (scope, idempotency_key)
  WHERE kept.expires_at > given.at`;

/** What tells a request's answer from every other one. */
export function answerKey([{ scope, idempotencyKey }]: AnswerAt): string {
  return JSON.stringify([scope, idempotencyKey]);
}

/** The keys of those that are kept already and have not expired. */
export async function keptAmong(client: PoolClient, answers: readonly AnswerAt[]): Promise<string[]> {
  if (answers.length === 0) return [];
  const { rows } = await client.query<[scope: string, idempotencyKey: string]>({
    name: "kept_answers",
    text: KEPT,
    values: [
      answers.map(([{ scope }]) => scope),
      answers.map(([{ idempotencyKey }]) => idempotencyKey),
      answers.map(([, at]) => at),
    ],
    rowMode: "array",
  });
  return rows.map((row) => JSON.stringify(row));
}

/** Keeps answers, none of which is kept already. What has expired by then is forgotten first. */
export async function insertAnswers(client: PoolClient, answers: readonly AnswerAt[]): Promise<void> {
  const latest = answers.reduce((most, [, at]) => laterOf(at, most), "");
  await inOrder([
    client.query({
      name: "forget_answers",
      text: "DELETE FROM answers WHERE expires_at <= $1",
      values: [latest],
    }),
    client.query({
      name: "insert_answers",
      text: INSERT,
      values: COLUMNS.map(([, , of]) => answers.map(([answer]) => of(answer))),
    }),
  ]);
}
