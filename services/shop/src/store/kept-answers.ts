import { and, eq } from "drizzle-orm";
import { answers } from "./history-tables.ts";
import type { KeptAnswer } from "./port.ts";
import { first, given, type Question, rowQuery } from "./query.ts";

const { scope, idempotencyKey, fingerprint, status, headers, body, expiresAt } = answers;

const kept = rowQuery({ scope, idempotencyKey, fingerprint, status, headers, body, expiresAt }, (selection) =>
  selection.from(answers).where(and(eq(scope, given("scope")), eq(idempotencyKey, given("idempotencyKey")))),
);

/** The answer that was kept for a request. */
export function findAnswer(scope: string, idempotencyKey: string): Question<KeptAnswer | undefined> {
  return first(kept, { scope, idempotencyKey });
}
