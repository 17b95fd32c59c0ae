import { connect } from "node:net";
import { describe, expect, test } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { openShop, PANEL_BIT } from "./shop.ts";

describe("every error is a problem with a stable type and a request id", () => {
  test("a path without anything", async () => {
    const { ask } = await openShop();
    const answer = await ask("GET", "/v1/dragons");
    expect(answer.status).toBe(404);
    expect(answer.headers["content-type"]).toMatch(/^application\/problem\+json/);
    expect(answer.body).toMatchObject({
      type: "urn:rimwise:problem:not-found",
      status: 404,
      code: "not-found",
      instance: "/v1/dragons",
      requestId: answer.headers["x-request-id"],
    });
  });

  test.each([
    ["PUT", "/v1/bits", "GET, HEAD, OPTIONS, POST"],
    ["DELETE", "/v1/woods", "GET, HEAD, OPTIONS"],
    ["POST", "/v1/bits/bit_1", "DELETE, GET, HEAD, OPTIONS, PATCH"],
    ["GET", "/v1/keys/key_1/revoke", "OPTIONS, POST"],
    ["POST", "/livez", "GET, HEAD, OPTIONS"],
  ] as const)("%s %s is a 405 that allows %s", async (method, url, allow) => {
    const { ask } = await openShop();
    const answer = await ask(method, url);
    expect(answer.status).toBe(405);
    expect(answer.body.code).toBe("method-not-allowed");
    expect(answer.headers["allow"]).toBe(allow);
  });

  test("a path that cannot be decoded", async () => {
    const { ask } = await openShop();
    const answer = await ask("GET", "/v1/bits/%zz");
    expect(answer.status).toBe(400);
    expect(answer.body.code).toBe("malformed-request");
    expect(answer.headers["x-request-id"]).toBe(answer.body.requestId);
  });

  test("a path part of 10,000 characters", async () => {
    const { ask } = await openShop();
    const answer = await ask("GET", `/v1/bits/${"x".repeat(10_000)}`);
    expect(answer.status).toBe(414);
    expect(answer.body.code).toBe("path-too-long");
  });

  test("something that is not HTTP", async () => {
    const { app } = await openShop();
    const address = await app.listen({ port: 0, host: "127.0.0.1" });
    const reply = await new Promise<string>((resolve, reject) => {
      const socket = connect(Number(new URL(address).port), "127.0.0.1", () => socket.write("HELLO\r\n\r\n"));
      let text = "";
      socket.on("data", (chunk) => {
        text += chunk;
      });
      socket.on("end", () => resolve(text));
      socket.on("error", reject);
    });
    expect(reply).toMatch(/^HTTP\/1\.1 400 Bad Request\r\n/);
    expect(reply).toContain("application/problem+json");
    expect(JSON.parse(reply.split("\r\n\r\n")[1] ?? "")).toMatchObject({
      code: "malformed-request",
      status: 400,
    });
  });

  test("a fault of our own is a 500 that says nothing of its cause, which the log holds whole", async () => {
    const { ask, app, file, log } = await openShop();
    await behindTheService({ file }, ({ drop }) => drop(["routers"]));
    const answer = await ask("GET", "/v1/routers");
    expect(answer.status).toBe(500);
    expect(answer.body.code).toBe("internal");
    expect(answer.text).not.toMatch(/routers\b.*table|relation|sqlite|postgres|\.ts/i);
    expect(log()).toMatch(/no such table: routers|relation .*"routers.*" does not exist/);
    expect(log()).toContain(String(answer.body.requestId));
    expect(app.server.listening).toBe(false);
  });
});

describe("headers on every answer", () => {
  test("a harmless request id is taken over, any other is replaced", async () => {
    const { ask } = await openShop();
    const mine = await ask("GET", "/v1/bits", { headers: { "X-Request-Id": "bench-3.42" } });
    expect(mine.headers["x-request-id"]).toBe("bench-3.42");
    for (const id of ["a b", "x".repeat(65), "<script>", 'a"b']) {
      const answer = await ask("GET", "/v1/bits", { headers: { "X-Request-Id": id } });
      expect(answer.headers["x-request-id"]).toMatch(/^[0-9a-f-]{36}$/);
    }
  });

  test("a trace context is echoed and logged when it is well formed", async () => {
    const { ask, log } = await openShop();
    // The example of W3C Trace Context, section 3.2.
    const traceparent = "00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01";
    const answer = await ask("GET", "/v1/bits", { headers: { traceparent } });
    expect(answer.headers["traceparent"]).toBe(traceparent);
    expect(log()).toContain(traceparent);
    const bad = await ask("GET", "/v1/bits", { headers: { traceparent: "00-xyz" } });
    expect(bad.headers["traceparent"]).toBeUndefined();
  });

  test("they forbid browsers to sniff, frame or share", async () => {
    const { ask } = await openShop();
    for (const url of ["/v1/bits", "/v1/nothing", "/livez"]) {
      const { headers } = await ask("GET", url);
      expect(headers["x-content-type-options"]).toBe("nosniff");
      expect(headers["content-security-policy"]).toContain("default-src 'none'");
      expect(headers["cache-control"]).toBe("private, no-cache");
    }
  });
});

describe("requests from other origins", () => {
  test("are not allowed unless a setting lists the origin", async () => {
    const origin = "https://shop.example";
    const closed = await openShop();
    const without = await closed.ask("GET", "/v1/bits", { headers: { origin } });
    expect(without.headers["access-control-allow-origin"]).toBeUndefined();

    const open = await openShop({ RIMWISE_CORS_ORIGINS: `${origin}, https://other.example` });
    const listed = await open.ask("GET", "/v1/bits", { headers: { origin } });
    expect(listed.headers["access-control-allow-origin"]).toBe(origin);
    expect(listed.headers["access-control-expose-headers"]).toMatch(
      /ETag.*Idempotent-Replayed.*Link.*RateLimit/,
    );
    const stranger = await open.ask("GET", "/v1/bits", { headers: { origin: "https://evil.example" } });
    expect(stranger.headers["access-control-allow-origin"]).not.toBe("https://evil.example");
    const preflight = await open.ask("OPTIONS", "/v1/bits", {
      key: null,
      headers: {
        origin,
        "access-control-request-method": "POST",
        "access-control-request-headers": "authorization,idempotency-key",
      },
    });
    expect(preflight.status).toBe(204);
    expect(preflight.headers["access-control-allow-origin"]).toBe(origin);
    const methods = preflight.headers["access-control-allow-methods"]?.split(/,\s*/);
    expect(methods).toEqual(["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE"]);
  });
});

describe("the rate limit", () => {
  test("counts each key by itself, says what is left, and then refuses for a while", async () => {
    const { ask } = await openShop({ RIMWISE_RATE_LIMIT_PER_MINUTE: "3" });
    const first = await ask("POST", "/v1/keys", { body: { name: "Other", role: "member" } });
    expect(first.headers["ratelimit-policy"]).toBe('"minute";q=3;w=60');
    expect(first.headers["ratelimit"]).toMatch(/^"minute";r=2;t=(60|59)$/);
    await ask("GET", "/v1/bits");
    await ask("GET", "/v1/bits");
    const refused = await ask("POST", "/v1/bits", { body: PANEL_BIT });
    expect(refused.status).toBe(429);
    expect(refused.body.code).toBe("too-many-requests");
    expect(Number(refused.headers["retry-after"])).toBeGreaterThan(0);
    expect((await ask("GET", "/v1/bits", { key: first.body.key })).body.data).toEqual([]);
  });

  test("counts guesses at keys by address, and leaves health checks alone", async () => {
    const { ask, managerKey } = await openShop({ RIMWISE_RATE_LIMIT_PER_MINUTE: "2" });
    const guess = `${managerKey.slice(0, -8)}00000000`;
    const statuses: number[] = [];
    for (let count = 0; count < 4; count += 1)
      statuses.push((await ask("GET", "/v1/bits", { key: guess })).status);
    expect(statuses).toEqual([401, 401, 429, 429]);
    expect((await ask("GET", "/v1/bits")).status).toBe(200);
    expect((await ask("GET", "/livez", { key: null })).status).toBe(200);
  });

  test("counts what needs no key by address and apart, and starves neither keys nor monitors", async () => {
    const { ask, app } = await openShop({ RIMWISE_PUBLIC_RATE_LIMIT_PER_MINUTE: "3" });
    const open = ["/openapi.json", "/v1/approvals/status", "/.well-known/jwks.json", "/pages/page.js"];
    for (const url of open.slice(0, 3)) expect((await ask("GET", url, { key: null })).status).toBe(200);
    for (const url of open) {
      const refused = await ask("GET", url, { key: null });
      expect(refused.status, url).toBe(429);
      expect(refused.body.code).toBe("too-many-requests");
      expect(Number(refused.headers["retry-after"])).toBeGreaterThan(0);
    }
    for (const url of ["/livez", "/readyz", "/version"])
      for (let count = 0; count < 5; count += 1)
        expect((await ask("GET", url, { key: null })).status, url).toBe(200);
    expect((await ask("GET", "/v1/bits")).status).toBe(200);
    const { statusCode } = await app.inject({ url: "/openapi.json", remoteAddress: "192.0.2.7" });
    expect(statusCode, "another address").toBe(200);
  });
});

describe("a process that runs late", () => {
  test("refuses requests for a while, and still says that it is alive", async () => {
    const { ask } = await openShop({ RIMWISE_BUSY_AFTER_MS: "1" });
    const lateUntil = Date.now() + 1500;
    while (Date.now() < lateUntil);
    await new Promise((resolve) => setTimeout(resolve, 20));
    const answer = await ask("GET", "/v1/bits");
    expect(answer.status).toBe(503);
    expect(answer.body.code).toBe("busy");
    expect(Number(answer.headers["retry-after"])).toBeGreaterThan(0);
    expect((await ask("GET", "/livez", { key: null })).status).toBe(200);
  });

  test("is not refused for being late just after it began to listen: the start itself runs late", async () => {
    const { app, ask } = await openShop({ RIMWISE_BUSY_AFTER_MS: "1" });
    await app.listen({ port: 0 });
    const lateUntil = Date.now() + 1500;
    while (Date.now() < lateUntil);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect((await ask("GET", "/v1/bits")).status).toBe(200);
  });
});
