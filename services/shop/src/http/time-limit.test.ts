import { once } from "node:events";
import { connect } from "node:net";
import Fastify from "fastify";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { answerProblems } from "./answer-problems.ts";
import type { App } from "./app-type.ts";
import { limitTime } from "./time-limit.ts";

const LIMIT_MS = 20;
const NEVER = new Promise<never>(() => undefined);

const timersPending = () => process.getActiveResourcesInfo().filter((name) => name === "Timeout").length;

describe("what takes longer than it may", () => {
  let app: App;
  let url: string;

  beforeEach(async () => {
    app = Fastify({ forceCloseConnections: true });
    answerProblems(app);
    limitTime(app, LIMIT_MS);
    app.get("/never", () => NEVER);
    app.post("/never", () => NEVER);
    app.get("/longer", { config: { timeLimitMs: 60_000 } }, async () => {
      await new Promise((resolve) => setTimeout(resolve, LIMIT_MS * 3));
      return { isDone: true };
    });
    app.get("/begun", (_request, reply) => {
      reply.hijack();
      reply.raw.writeHead(200);
      reply.raw.write("first");
      setTimeout(() => reply.raw.end(" last"), LIMIT_MS * 3);
    });
    app.get("/stuck", async (_request, reply) => {
      reply.raw.writeHead(200).write("first");
      return NEVER;
    });
    app.post("/read", () => ({ isDone: true }));
    app.get("/done", () => ({ isDone: true }));
    url = await app.listen({ port: 0 });
  });
  afterEach(() => app.close());

  it.each([
    ["a request without a body", { method: "GET" }],
    [
      "a request whose body has been read",
      { method: "POST", body: "{}", headers: { "content-type": "application/json" } },
    ],
  ])("is answered with a problem: %s", async (_name, options) => {
    const answer = await fetch(`${url}/never`, options);
    expect(answer.status).toBe(503);
    expect(answer.headers.get("retry-after")).toBe("1");
    expect(await answer.json()).toMatchObject({ code: "took-too-long" });
  });

  it.each([
    ["of a length that was said", "Content-Length: 1000\r\n\r\n{"],
    ["in pieces", "Transfer-Encoding: chunked\r\n\r\n1\r\n{\r\n"],
  ])("is closed with a 408 while it sends its body %s, a byte now and then", async (_what, rest) => {
    const socket = connect(Number(new URL(url).port), "127.0.0.1");
    let answer = "";
    socket.on("data", (chunk) => {
      answer += chunk;
    });
    socket.on("error", () => undefined);
    socket.write(`POST /read HTTP/1.1\r\nHost: shop\r\nContent-Type: application/json\r\n${rest}`);
    const drip = setInterval(() => socket.write(rest.startsWith("C") ? " " : "1\r\n \r\n"), 5);
    await once(socket, "close");
    clearInterval(drip);
    expect(answer).toMatch(/^HTTP\/1\.1 408 [\s\S]+application\/problem\+json[\s\S]+"request-too-slow"/);
  });

  it("is given longer if its route says so", async () => {
    expect(await (await fetch(`${url}/longer`)).json()).toEqual({ isDone: true });
  });

  it("is cut off if its answer has begun", async () => {
    const answer = await fetch(`${url}/stuck`);
    expect(answer.status).toBe(200);
    await expect(answer.text()).rejects.toThrow();
  });

  it("is left alone if its answer is no longer ours", async () => {
    expect(await (await fetch(`${url}/begun`)).text()).toBe("first last");
  });

  it("is not waited for once it was answered, even if no connection closes", async () => {
    const before = timersPending();
    expect((await app.inject("/done")).statusCode).toBe(200);
    expect(timersPending()).toBe(before);
  });
});
