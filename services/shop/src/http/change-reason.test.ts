import Fastify from "fastify";
import { describe, expect, onTestFinished, test } from "vitest";
import { answerProblems } from "./answer-problems.ts";
import type { App } from "./app-type.ts";
import { takeReasons } from "./change-reason.ts";

async function reasonTakenFrom(header: string | undefined, method: "POST" | "GET" = "POST") {
  const app: App = Fastify();
  onTestFinished(() => app.close());
  answerProblems(app);
  takeReasons(app);
  app.route({ method, url: "/", handler: async ({ why }) => ({ why: why ?? null }) });
  return app.inject({ method, url: "/", headers: header === undefined ? {} : { "change-reason": header } });
}

describe("the reason of a change", () => {
  test.each([
    [undefined, null],
    ["worn", "worn"],
    ["  chipped on a knot  ", "chipped on a knot"],
    ["after 5%25 wear", "after 5% wear"],
    [encodeURIComponent("stumpf – neu geschärft ✓"), "stumpf – neu geschärft ✓"],
    [encodeURIComponent("摩耗"), "摩耗"],
    ["x".repeat(300), "x".repeat(300)],
    [encodeURIComponent("🪵".repeat(300)), "🪵".repeat(300)],
  ])("%j is taken as %j", async (header, why) => {
    const answer = await reasonTakenFrom(header);
    expect(answer.statusCode).toBe(200);
    expect(answer.json()).toEqual({ why });
  });

  test.each([
    ["nothing to see", ""],
    ["nothing to see but spaces", "%20%20"],
    ["301 characters", "x".repeat(301)],
    ["a line end", "worn%0Aout"],
    ["a control character", "worn%00out"],
    ["a line separator", "worn%E2%80%A8out"],
    ["what turns the writing direction", "worn%E2%80%AEout"],
    ["a lone percent sign", "after 5% wear"],
    ["bytes that are not UTF-8", "%FF%FE"],
    ["raw bytes beyond ASCII", "gesch\u00e4rft"],
  ])("that is %s is refused by name", async (_what, header) => {
    const answer = await reasonTakenFrom(header);
    expect(answer.statusCode).toBe(422);
    expect(answer.json().errors).toMatchObject([{ in: "header", pointer: "/Change-Reason" }]);
    expect(answer.json().errors[0].accepted).toContain("300");
  });

  test("of what changes nothing is no concern of anybody's", async () => {
    const answer = await reasonTakenFrom("100%", "GET");
    expect(answer.statusCode).toBe(200);
    expect(answer.json()).toEqual({ why: null });
  });
});
