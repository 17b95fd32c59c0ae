import { describe, expect, it, vi } from "vitest";
import { answering, json, problem } from "../testing/scripted-service.ts";
import { settled } from "../testing/timers.ts";
import { createClient } from "./client.ts";
import { CallError, NotFound } from "./errors.ts";
import { CLIENT_VERSION } from "./generated/version.ts";
import type { ClientOptions } from "./options.ts";
import { NOT_MODIFIED } from "./read.ts";

const BASE = "http://shop.test";

function clientOf(answers: Parameters<typeof answering>, options: Partial<ClientOptions> = {}) {
  const { fetch, requests } = answering(...answers);
  return { client: createClient({ baseUrl: BASE, key: "k3y", retries: 0, fetch, ...options }), requests };
}

describe("a base URL", () => {
  it("keeps the path the service stands under", async () => {
    const { client, requests } = clientOf([json(200, {})], { baseUrl: "https://example.test/shop" });
    await client.bits.get("b");
    expect(requests[0]?.url).toBe("https://example.test/shop/v1/bits/b");
  });
});

describe("options", () => {
  it("can be others for some calls, and headers are added to the ones there are", async () => {
    const { client, requests } = clientOf([json(200, {}), json(200, {})], {
      headers: { "X-Bench": "3", "x-a": "1" },
    });
    await client.withOptions({ key: "other", headers: { "x-bench": "4" } }).me.get();
    await client.me.get({ headers: { "X-A": "2" } });
    const sent = requests.map(({ headers }) =>
      ["authorization", "x-bench", "x-a"].map((name) => headers.get(name)),
    );
    expect(sent).toEqual([
      ["Bearer other", "4", "1"],
      ["Bearer k3y", "3", "2"],
    ]);
  });

  it("that are undefined are the same as absent", async () => {
    const { fetch, requests } = answering(problem(500, "internal"), json(200, {}));
    const none = {
      key: undefined,
      timeoutMs: undefined,
      deadlineMs: undefined,
      retries: undefined,
      log: undefined,
    };
    const client = createClient({ baseUrl: BASE, fetch, headers: undefined, ...none });
    vi.useFakeTimers();
    const options = { signal: undefined, retries: undefined, timeoutMs: undefined, deadlineMs: undefined };
    await settled(
      client.bits.create(
        { name: "A", form: STRAIGHT, shankDiameterMm: 6, wings: 2 },
        { ...options, reason: undefined, idempotencyKey: undefined },
      ),
    );
    vi.useRealTimers();
    expect(requests).toHaveLength(2);
    expect(requests[0]?.headers.get("authorization")).toBeNull();
    expect(client.withOptions({ retries: undefined })).toHaveProperty("bits");
  });

  const STRAIGHT = { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 } as const;

  it("say who calls, unless the caller does", async () => {
    const { client, requests } = clientOf([json(200, {}), json(200, {})]);
    await client.me.get();
    await client.me.get({ headers: { "user-agent": "stock-room/2" } });
    const agents = requests.map(({ headers }) => headers.get("user-agent"));
    expect(agents).toEqual([`rimwise-client/${CLIENT_VERSION}`, "stock-room/2"]);
  });
});

describe("a key that a function gives", () => {
  it("is asked for before each attempt", async () => {
    const keys = ["first", "second"];
    const { client, requests } = clientOf([problem(503, "busy", { "retry-after": "0" }), json(200, {})], {
      key: async () => keys.shift() ?? "none",
      retries: 1,
    });
    await client.me.get();
    expect(requests.map(({ headers }) => headers.get("authorization"))).toEqual([
      "Bearer first",
      "Bearer second",
    ]);
  });

  it("fails the call with its own error, once, and sends nothing", async () => {
    const lost = new Error("the key store is locked");
    const key = vi.fn(() => Promise.reject(lost));
    const { client, requests } = clientOf([], { key, retries: 2 });
    await expect(client.me.get()).rejects.toBe(lost);
    expect(key).toHaveBeenCalledTimes(1);
    await expect(client.withOptions({ key: () => "two words" }).me.get()).rejects.toThrow(/visible ASCII/);
    expect(requests).toHaveLength(0);
  });

  it("must come in time", async () => {
    const { client } = clientOf([], { key: () => new Promise(() => {}), timeoutMs: 10 });
    await expect(client.me.get()).rejects.toMatchObject({ name: "TimeoutError" });
  });
});

describe("what no method stands for", () => {
  it("is sent with the same headers, query, retries and errors", async () => {
    const { client, requests } = clientOf([
      json(200, { drawers: 3 }),
      new Response(null, { status: 204 }),
      problem(404, "not-found"),
    ]);
    const path = "/v2/cabinets/{cabinetId}";
    const pathParameters = { cabinetId: "a/b" };
    expect(await client.request({ method: "GET", path, pathParameters, query: { open: true } })).toEqual({
      drawers: 3,
    });
    expect(await client.request({ method: "PUT", path, pathParameters, body: { a: 1 } })).toBeUndefined();
    await expect(client.request({ method: "GET", path, pathParameters })).rejects.toBeInstanceOf(NotFound);
    expect(requests[0]?.url).toBe(`${BASE}/v2/cabinets/a%2Fb?open=true`);
    expect(requests.map(({ headers }) => headers.has("idempotency-key"))).toEqual([false, true, false]);
    expect(await requests[1]?.json()).toEqual({ a: 1 });
  });

  it.each([
    "v1/bits",
    "https://evil.test/",
    "/v1/../keys",
    "/v1/%2e%2E/keys",
    "/v1/bits?limit=1",
    "/v1\\bits",
  ])("is refused at the path %j", (path) => {
    const { client } = clientOf([]);
    expect(() => client.request({ method: "GET", path })).toThrow(/path must be/);
  });
});

describe("a conditional read", () => {
  it("gives the record, or says that it has not changed", async () => {
    const { client, requests } = clientOf([
      new Response(null, { status: 304, headers: { etag: '"7"' } }),
      json(200, { id: "b" }),
    ]);
    const { data, response } = await client.bits.get("b", { ifNoneMatch: 7 }).withResponse();
    expect(data).toBe(NOT_MODIFIED);
    expect(response).toMatchObject({ status: 304, etag: '"7"' });
    expect(requests[0]?.headers.get("if-none-match")).toBe('"7"');
    const bit = await client.bits.get("b", { ifNoneMatch: 6 });
    // The type leaves nothing but the record.
    expect(bit === NOT_MODIFIED ? undefined : bit.id).toBe("b");
  });

  it("is the only one that may get a 304", async () => {
    const { client } = clientOf([new Response(null, { status: 304 })]);
    await expect(client.bits.get("b")).rejects.toMatchObject({ status: 304, code: "unknown" });
  });
});

describe("a body", () => {
  it("of bytes is sent as it is, and again", async () => {
    const data = new TextEncoder().encode("name\nA\n");
    const { client, requests } = clientOf([problem(503, "busy", { "retry-after": "0" }), json(200, {})], {
      retries: 1,
    });
    await client.bits.import({ contentType: "text/csv", data });
    expect(await Promise.all(requests.map((request) => request.text()))).toEqual(["name\nA\n", "name\nA\n"]);
  });
});

it("every failure of a call is one class with the answer's status and headers", async () => {
  const headers = { "content-type": "text/html", "x-request-id": "r1" };
  for (const answer of [problem(500, "internal", headers), new Response("<p>", { headers })]) {
    const { client } = clientOf([answer]);
    const error: unknown = await client.me.get().catch((failure: unknown) => failure);
    if (!(error instanceof CallError)) throw error;
    expect(error.headers?.get("x-request-id")).toBe("r1");
    expect(error.status).toBe(answer.status);
  }
});
