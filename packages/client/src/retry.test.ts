import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { answering, CREATE, json, problem, READ, send } from "../testing/scripted-service.ts";
import { settled } from "../testing/timers.ts";
import { ApiError, Conflict, ConnectionError, RateLimited } from "./errors.ts";

beforeEach(() => {
  vi.useFakeTimers();
  vi.spyOn(Math, "random").mockReturnValue(0);
});

afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

describe("a retry", () => {
  it.each([
    ["a connection that breaks", new TypeError("fetch failed")],
    ["408", problem(408, "request-too-slow")],
    ["429", problem(429, "too-many-requests")],
    ["500", problem(500, "internal")],
    ["503", problem(503, "busy")],
    ["409 while the first is still running", problem(409, "idempotency-in-progress")],
    ["a proxy's page", new Response("<html>", { status: 502, headers: { "content-type": "text/html" } })],
    ["a success cut short", new Response('{"id":', { headers: { "content-type": "application/json" } })],
  ])("follows %s", async (_what, failure) => {
    const { fetch, requests } = answering(failure, json(200, { id: "bit_1" }));
    expect(await settled(send(fetch, READ))).toEqual({ data: { id: "bit_1" } });
    expect(requests).toHaveLength(2);
  });

  it.each([
    [400, "malformed-request"],
    [401, "key-not-valid"],
    [404, "not-found"],
    [409, "last-manager"],
    [412, "version-stale"],
    [422, "not-valid"],
    [428, "version-required"],
  ])("does not follow %d %s", async (status, code) => {
    const { fetch, requests } = answering(problem(status, code));
    const { error } = await settled(send(fetch, READ));
    expect(error).toMatchObject({ status, code, requestId: "r1" });
    expect(requests).toHaveLength(1);
  });

  it("sends a fresh Request with the same Idempotency-Key and body", async () => {
    const { fetch, requests } = answering(
      new TypeError("reset"),
      problem(503, "busy"),
      json(201, { id: "bit_1" }),
    );
    await settled(send(fetch, CREATE));
    expect(new Set(requests).size).toBe(3);
    const keys = requests.map(({ headers }) => headers.get("idempotency-key"));
    expect(keys[0]).toMatch(/^[0-9a-f]{32}$/);
    expect(new Set(keys).size).toBe(1);
    for (const request of requests) expect(await request.text()).toBe('{"name":"Cove"}');
  });

  it("uses another Idempotency-Key for another call, and the caller's own if given", async () => {
    const { fetch, requests } = answering(json(201, {}), json(201, {}), json(201, {}));
    await send(fetch, CREATE);
    await send(fetch, CREATE);
    await send(fetch, CREATE, { idempotencyKey: "mine" });
    const [first, second, third] = requests.map(({ headers }) => headers.get("idempotency-key"));
    expect(first).not.toBe(second);
    expect(third).toBe("mine");
  });

  it("stops after two, with the last error", async () => {
    const { fetch, requests } = answering(...[1, 2, 3].map(() => problem(500, "internal")));
    expect((await settled(send(fetch, READ))).error).toBeInstanceOf(ApiError);
    expect(requests).toHaveLength(3);
  });

  it("is omitted if none are wanted", async () => {
    const { fetch, requests } = answering(new TypeError("fetch failed"));
    const { error } = await settled(send(fetch, READ, { retries: 0 }));
    expect(error).toBeInstanceOf(ConnectionError);
    expect(error).toMatchObject({ cause: { message: "fetch failed" } });
    expect(requests).toHaveLength(1);
  });

  it("waits half a second, then a second, then at most eight", async () => {
    const failures = Array.from({ length: 7 }, () => problem(500, "internal"));
    const { fetch } = answering(...failures);
    const waits: (number | undefined)[] = [];
    await settled(send(fetch, READ, { retries: 6 }, { log: ({ retryInMs }) => waits.push(retryInMs) }));
    expect(waits).toEqual([500, 1000, 2000, 4000, 8000, 8000, undefined]);
  });

  it("takes off up to half of a wait at random", async () => {
    vi.spyOn(Math, "random").mockReturnValue(1);
    const { fetch } = answering(problem(500, "internal"), json(200, {}));
    const waits: (number | undefined)[] = [];
    await settled(send(fetch, READ, {}, { log: ({ retryInMs }) => waits.push(retryInMs) }));
    expect(waits).toEqual([250, undefined]);
  });

  it("waits as long as it is asked to, in seconds or until a date", async () => {
    vi.setSystemTime(new Date("2026-01-01T00:00:00Z"));
    const until = "Thu, 01 Jan 2026 00:00:20 GMT";
    const { fetch } = answering(
      problem(429, "too-many-requests", { "retry-after": "7" }),
      problem(503, "busy", { "retry-after": until }),
      json(200, {}),
    );
    const waits: (number | undefined)[] = [];
    await settled(send(fetch, READ, {}, { log: ({ retryInMs }) => waits.push(retryInMs) }));
    expect(waits).toEqual([7000, 13_000, undefined]);
  });

  it("is left to the caller if the wait asked for is over a minute", async () => {
    const { fetch, requests } = answering(problem(429, "too-many-requests", { "retry-after": "61" }));
    const { error } = await settled(send(fetch, READ));
    expect(error).toBeInstanceOf(RateLimited);
    expect(error).toMatchObject({ retryAfterMs: 61_000 });
    expect(requests).toHaveLength(1);
  });

  it("does not begin after the deadline of the whole call", async () => {
    const { fetch, requests } = answering(problem(503, "busy", { "retry-after": "10" }));
    const { error } = await settled(send(fetch, READ, { deadlineMs: 9000 }));
    expect(error).toMatchObject({ status: 503 });
    expect(requests).toHaveLength(1);
  });

  it("follows a Conflict only while the first request is running", async () => {
    const { fetch } = answering(problem(409, "idempotency-in-progress"), problem(409, "secret-shown-once"));
    expect((await settled(send(fetch, CREATE))).error).toBeInstanceOf(Conflict);
  });
});
