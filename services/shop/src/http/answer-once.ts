import { hash } from "node:crypto";
import type { FastifyReply, FastifyRequest } from "fastify";
import { callerOf } from "../access/caller.ts";
import type { ProblemCode } from "../problems/codes.ts";
import { Problem, pathOf, problemBody } from "../problems/problem.ts";
import { canonicalText } from "../store/canonical.ts";
import type { Change, Expectation, KeptAnswer, Stamp } from "../store/port.ts";
import type { Store } from "../store/store.ts";
import { changedMeanwhile, retryOnConflict, type Write } from "./write.ts";

/** What a creating request decided: the changes, and the 201 that answers it. */
export type Creation = {
  readonly stamp: Stamp;
  readonly changes: readonly Change[];
  readonly expects?: readonly Expectation[];
  readonly headers: Readonly<Record<string, string>>;
  readonly body: object;
  /** Kept in place of the body when the body holds a secret that is shown once. */
  readonly onRepeat?: Problem;
};

/** Answers a creating request, once for each Idempotency-Key. */
export type AnswerOnce = (request: FastifyRequest, reply: FastifyReply, decide: Decide) => Promise<void>;

type Decide = () => Promise<Creation>;
type Ask = Pick<KeptAnswer, "scope" | "idempotencyKey" | "fingerprint">;
type Answer = Pick<KeptAnswer, "status" | "headers" | "body">;

const KEPT_FOR_MS = 24 * 60 * 60 * 1000;
const IDEMPOTENCY_KEY = /^[\x21-\x7e]{1,255}$/;
/** Refusals that were decided, and would be decided the same way again. */
const DECIDED: readonly number[] = [404, 409];
/** Refusals of the moment: the same request may well succeed when it is sent again. */
const PASSING: readonly ProblemCode[] = ["idempotency-in-progress", "changed-meanwhile"];

/**
 * The same request again, with the same Idempotency-Key, gets the first answer, marked
 * `Idempotent-Replayed: true`; with another body it is refused, and while the first still runs it must wait. The answer
 * is kept in the transaction that makes the changes, so there is no moment at which one exists without the other.
 */
export function answersOnce(findAnswer: Store["findAnswer"], write: Write, now: () => Date): AnswerOnce {
  const running = new Set<string>();

  async function firstAnswer(ask: Ask | undefined, reply: FastifyReply, decide: Decide): Promise<Answer> {
    const creation = await decide();
    const { stamp, changes, expects = [], headers, onRepeat } = creation;
    reply.code(201);
    const answer = { status: 201, headers, body: String(reply.serialize(creation.body)) };
    const kept = onRepeat === undefined ? answer : problemAnswer(onRepeat, reply.request);
    const answerKept = ask && { answer: { ...ask, ...kept, expiresAt: expiry(now()) } };
    await write({ stamp, changes, expects, ...answerKept }, changedMeanwhile);
    return answer;
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
      await keepRefusal(ask, error, reply.request);
      throw error;
    } finally {
      running.delete(run);
    }
  }

  return async (request, reply, decide) => {
    const ask = askOf(request);
    if (ask === undefined) {
      return send(await retryOnConflict(() => firstAnswer(undefined, reply, decide)), reply);
    }
    const kept = await findAnswer(ask.scope, ask.idempotencyKey);
    if (kept === undefined || kept.expiresAt <= now().toISOString()) {
      return send(await answerOf(ask, reply, decide), reply);
    }
    if (kept.fingerprint !== ask.fingerprint) {
      throw new Problem("idempotency-key-reused", "Use a new key for another request.");
    }
    return send(kept, reply.header("Idempotent-Replayed", "true"));
  };
}

function askOf(request: FastifyRequest): Ask | undefined {
  const idempotencyKey = request.headers["idempotency-key"];
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
    fingerprint: hash("sha256", canonicalText(request.body ?? null)),
  };
}

async function send({ status, headers, body }: Answer, reply: FastifyReply): Promise<void> {
  const type = status < 400 ? "application/json; charset=utf-8" : "application/problem+json";
  await reply.code(status).headers(headers).type(type).send(body);
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

function expiry(now: Date): string {
  return new Date(now.getTime() + KEPT_FOR_MS).toISOString();
}
