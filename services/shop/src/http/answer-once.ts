import { hash } from "node:crypto";
import type { FastifyReply, FastifyRequest } from "fastify";
import { callerOf } from "../access/caller.ts";
import type { ProblemCode } from "../problems/codes.ts";
import { Problem, pathOf, problemBody } from "../problems/problem.ts";
import { canonicalText } from "../store/canonical.ts";
import type { KeptAnswer, WriteBatch } from "../store/port.ts";
import type { Store } from "../store/store.ts";
import { changedMeanwhile, retryOnConflict, type Write } from "./write.ts";

/** What a writing request decided: the changes, and what answers it. */
export type Outcome = Omit<WriteBatch, "answer"> & {
  readonly status: 200 | 201 | 204;
  readonly headers?: Readonly<Record<string, string>>;
  /** Null for an answer without a body. */
  readonly body: object | null;
  /** Kept in place of the body when the body holds a secret that is shown once. */
  readonly onRepeat?: Problem;
  /** How long the answer is kept, ms. Default: 24 hours. */
  readonly keptForMs?: number;
  /** Says otherwise that a record it changes has moved on. Default: what it rests on has changed, so it is decided again. */
  readonly ifStale?: (version: number) => Problem;
  /** Called once the changes are written, or could not be. */
  readonly release?: () => Promise<void>;
};

/**
 * Answers a writing request, once for each Idempotency-Key. `content` is what tells its body from another one. Default: the
 * body that was read.
 */
export type AnswerOnce = (
  request: FastifyRequest,
  reply: FastifyReply,
  decide: Decide,
  content?: unknown,
) => Promise<void>;

type Decide = () => Promise<Outcome>;
type Ask = Pick<KeptAnswer, "scope" | "idempotencyKey" | "fingerprint">;
type Answer = Pick<KeptAnswer, "status" | "headers" | "body"> & { readonly isReplayed?: true };

const KEPT_FOR_MS = 24 * 60 * 60 * 1000;
const IDEMPOTENCY_KEY = /^[\x21-\x7e]{1,255}$/;
/** Refusals that were decided, and would be decided the same way again. */
const DECIDED: readonly number[] = [404, 409];
/** Refusals of the moment: the same request may well succeed when it is sent again. */
const PASSING: readonly ProblemCode[] = [
  "idempotency-in-progress",
  "changed-meanwhile",
  "import-running",
  "backup-running",
];

/**
 * The same request again, with the same Idempotency-Key, gets the first answer, marked
 * `Idempotent-Replayed: true`; with another body it is refused, and while the first still runs it must wait. The answer
 * is kept in the transaction that makes the changes, so there is no moment at which one exists without the other.
 */
export function answersOnce(findAnswer: Store["findAnswer"], write: Write, now: () => Date): AnswerOnce {
  const running = new Set<string>();

  async function firstAnswer(ask: Ask | undefined, reply: FastifyReply, decide: Decide): Promise<Answer> {
    const outcome = await decide();
    const { status, headers = {}, body, onRepeat, keptForMs, ifStale = changedMeanwhile, release } = outcome;
    try {
      const text = body === null ? "" : String(reply.code(status).serialize(body));
      const answer = { status, headers, body: text };
      const kept = onRepeat === undefined ? answer : problemAnswer(onRepeat, reply.request);
      const answerKept = ask && { answer: { ...ask, ...kept, expiresAt: expiry(now(), keptForMs) } };
      const { stamp, changes, streamed, expects = [] } = outcome;
      const hasChanges = changes.length > 0 || streamed !== undefined;
      if (hasChanges || ask) {
        await write({ stamp, changes, expects, ...(streamed && { streamed }), ...answerKept }, ifStale);
      }
      return answer;
    } finally {
      await release?.();
    }
  }

  /** A decided refusal changes nothing, but is kept like any other answer. */
  async function keepRefusal(ask: Ask, error: unknown, request: FastifyRequest): Promise<void> {
    if (!(error instanceof Problem) || !DECIDED.includes(error.status)) return;
    if (PASSING.includes(error.code)) return;
    const stamp = { by: callerOf(request).keyId, at: now().toISOString(), requestId: request.id };
    const kept = { ...ask, ...problemAnswer(error, request), expiresAt: expiry(now()) };
    await write({ stamp, changes: [], answer: kept });
  }

  async function answerOf(ask: Ask, reply: FastifyReply, decide: Decide): Promise<Answer> {
    const run = `${ask.scope} ${ask.idempotencyKey}`;
    if (running.has(run)) throw stillRunning();
    running.add(run);
    try {
      return await retryOnConflict(() => firstAnswer(ask, reply, decide));
    } catch (error) {
      // What another process has answered meanwhile is the answer, not what became of the same request here after it.
      const answered = error instanceof Problem && (await keptFor(ask));
      if (answered) return { ...answered, isReplayed: true };
      await keepRefusal(ask, error, reply.request);
      throw error;
    } finally {
      running.delete(run);
    }
  }

  /** The answer that is kept for a request, whichever process gave it. Throws when it was given to another body. */
  async function keptFor({ scope, idempotencyKey, fingerprint }: Ask): Promise<KeptAnswer | undefined> {
    const kept = await findAnswer(scope, idempotencyKey);
    if (kept === undefined || kept.expiresAt <= now().toISOString()) return undefined;
    if (kept.fingerprint === fingerprint) return kept;
    throw new Problem("idempotency-key-reused", "Use a new key for another request.");
  }

  return async (request, reply, decide, content = request.body) => {
    const ask = askOf(request, content);
    if (ask === undefined) {
      return send(await retryOnConflict(() => firstAnswer(undefined, reply, decide)), reply);
    }
    const kept = await keptFor(ask);
    return send(
      kept === undefined ? await answerOf(ask, reply, decide) : { ...kept, isReplayed: true },
      reply,
    );
  };
}

function askOf(request: FastifyRequest, content: unknown): Ask | undefined {
  const { "idempotency-key": idempotencyKey, "if-match": version } = request.headers;
  if (idempotencyKey === undefined) return undefined;
  if (typeof idempotencyKey !== "string" || !IDEMPOTENCY_KEY.test(idempotencyKey)) {
    throw new Problem("not-valid", "The Idempotency-Key cannot be used.", {
      errors: [
        {
          in: "header",
          pointer: "/Idempotency-Key",
          message: "This is not a usable key.",
          accepted: "1 to 255 visible ASCII characters, such as a UUID",
        },
      ],
    });
  }
  return {
    scope: `${callerOf(request).keyId} ${request.method} ${request.url}`,
    idempotencyKey,
    fingerprint: hash(
      "sha256",
      canonicalText(content ?? null) + (version === undefined ? "" : `\nIf-Match: ${version}`),
    ),
  };
}

async function send({ status, headers, body, isReplayed }: Answer, reply: FastifyReply): Promise<void> {
  reply.code(status).headers(headers);
  if (isReplayed) reply.header("Idempotent-Replayed", "true");
  if (status === 204) return void (await reply.send(null));
  const type = status < 400 ? "application/json; charset=utf-8" : "application/problem+json";
  await reply.type(type).send(body);
}

function problemAnswer(problem: Problem, request: FastifyRequest): Answer {
  const body = JSON.stringify(problemBody(problem, request.id, pathOf(request)));
  return { status: problem.status, headers: problem.headers, body };
}

function stillRunning(): Problem {
  return new Problem("idempotency-in-progress", "Wait for the first one's answer, or ask again.", {
    headers: { "Retry-After": "1" },
  });
}

function expiry(now: Date, keptForMs = KEPT_FOR_MS): string {
  return new Date(now.getTime() + keptForMs).toISOString();
}
