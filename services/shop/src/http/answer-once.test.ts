import Fastify from "fastify";
import Type from "typebox";
import { describe, expect, onTestFinished, test } from "vitest";
import type { Caller } from "../access/caller.ts";
import type { ProblemCode } from "../problems/codes.ts";
import { Problem } from "../problems/problem.ts";
import { openStore } from "../store/open.ts";
import { answersOnce } from "./answer-once.ts";
import { answerProblems } from "./answer-problems.ts";
import type { App } from "./app-type.ts";
import { writeThrough } from "./write.ts";

const CALLER: Caller = { keyId: "key_1", role: "manager" };

/** A route whose first decision is a refusal and whose later ones are not. */
async function routeRefusing(code: ProblemCode) {
  const store = await openStore(":memory:", {
    kinds: [],
    rules: [],
    completions: [],
    computed: [],
    derivations: [],
  });
  const app: App = Fastify();
  onTestFinished(async () => {
    await app.close();
    await store.close();
  });
  answerProblems(app);
  app.decorateRequest("caller", null);
  app.addHook("onRequest", async (request) => {
    request.caller = CALLER;
  });
  const answerOnce = answersOnce(store.findAnswer, writeThrough(store.commit), () => new Date());
  let decisions = 0;
  app.post(
    "/things",
    { schema: { response: { 201: Type.Object({ made: Type.Boolean() }) } } },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        decisions += 1;
        if (decisions === 1) throw new Problem(code, "Refused.");
        const stamp = { by: "key_1", at: new Date().toISOString(), requestId: request.id };
        return { stamp, status: 201, changes: [], body: { made: true } };
      }),
  );
  const post = () =>
    app.inject({
      method: "POST",
      url: "/things",
      headers: { "idempotency-key": "one" },
      payload: { name: "x" },
    });
  return { first: await post(), second: await post() };
}

describe("a writing request that was refused, sent again", () => {
  test("gets the same refusal if it was decided", async () => {
    const { first, second } = await routeRefusing("not-found");
    expect(first.statusCode).toBe(404);
    expect(second.statusCode).toBe(404);
    expect(second.headers["idempotent-replayed"]).toBe("true");
    expect(second.headers["content-type"]).toMatch(/^application\/problem\+json/);
    expect(second.body).toBe(first.body);
  });

  test.each(["not-valid", "too-many-requests", "internal", "busy"] as const)(
    "is tried again after %s",
    async (code) => {
      const { first, second } = await routeRefusing(code);
      expect(first.statusCode).toBeGreaterThanOrEqual(400);
      expect(second.statusCode).toBe(201);
      expect(second.json()).toEqual({ made: true });
      expect(second.headers["idempotent-replayed"]).toBeUndefined();
    },
  );

  test("is decided again at once if what it rests on had changed, so that nobody has to send it again", async () => {
    const { first, second } = await routeRefusing("changed-meanwhile");
    expect(first.statusCode).toBe(201);
    expect(second.headers["idempotent-replayed"]).toBe("true");
  });
});
