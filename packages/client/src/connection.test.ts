import { describe, expect, it } from "vitest";
import { answering, CREATE, json, problem, READ, send } from "../testing/scripted-service.ts";
import { ConnectionError, RateLimited } from "./errors.ts";

const ONCE = { retries: 0 };
const failure = (call: Promise<unknown>) =>
  call.then(
    () => "an answer",
    (error: unknown) => error,
  );

describe("an answer that is not the service's", () => {
  const page = { "content-type": "text/html" };

  it.each([
    ["a record", READ],
    ["nothing", { ...READ, method: "DELETE" as const, answers: [] }],
    ["a label", { ...READ, answers: ["image/svg+xml"] }],
  ])("is no success if %s was asked for: a guest network's page", async (_what, operation) => {
    const { fetch } = answering(new Response("<html>Welcome, guest</html>", { headers: page }));
    const error = await failure(send(fetch, operation, ONCE));
    expect(error).toBeInstanceOf(ConnectionError);
    expect(error).toMatchObject({ code: "not-the-service", message: expect.stringContaining("text/html") });
  });

  it("is no record if it has no type or no content", async () => {
    for (const answer of [new Response(null, { status: 204 }), new Response(new Uint8Array([123, 125]))]) {
      const error = await failure(send(answering(answer).fetch, READ, ONCE));
      expect(error).toMatchObject({ name: "ConnectionError", code: "not-the-service" });
    }
  });
});

describe("a redirect", () => {
  it("is named, with where it leads, and neither followed nor asked again", async () => {
    const headers = { location: "https://elsewhere.test/v1/bits/bit_1" };
    const error = await failure(send(answering(new Response(null, { status: 307, headers })).fetch, READ));
    expect(error).toMatchObject({ code: "redirected", call: { attempts: 1 } });
    expect(String(error)).toContain("https://elsewhere.test/v1/bits/bit_1");
  });

  it("is known where a page may not look into it", async () => {
    const opaque = Object.defineProperty(Response.error(), "type", { value: "opaqueredirect" });
    const error = await failure(send(answering(opaque).fetch, READ));
    expect(error).toMatchObject({ code: "redirected", call: { attempts: 1 } });
  });
});

it("Retry-After is read by the clock of whoever answered", async () => {
  const headers = { date: "Mon, 02 Mar 2026 08:00:00 GMT", "retry-after": "Mon, 02 Mar 2026 08:00:07 GMT" };
  const error = await failure(send(answering(problem(429, "too-many-requests", headers)).fetch, READ, ONCE));
  expect(error instanceof RateLimited && error.retryAfterMs).toBe(7000);
});

describe("what a call fails with after the last attempt", () => {
  it("says how to ask again: key, method, path, attempts and request id", async () => {
    const { fetch, requests } = answering(new TypeError("fetch failed"));
    const error = await failure(send(fetch, CREATE, { ...ONCE, idempotencyKey: "order-7" }));
    const requestId = requests[0]?.headers.get("x-request-id");
    expect(requestId).toMatch(/^[0-9a-f]{32}$/);
    expect(error).toMatchObject({
      call: { method: "POST", path: "/v1/bits", attempts: 1, idempotencyKey: "order-7", requestId },
    });
  });

  it("waiting for the answer to an earlier attempt is no attempt of its own", async () => {
    const running = () => problem(409, "idempotency-in-progress", { "retry-after": "0" });
    const { fetch } = answering(
      new TypeError("fetch failed"),
      ...[1, 2, 3].map(running),
      json(201, { id: "b" }),
    );
    expect(await send(fetch, CREATE, { retries: 1 })).toEqual({ id: "b" });
  });
});
