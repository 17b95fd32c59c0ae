import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { beforeEach, describe, expect, test } from "vitest";
import { injected } from "../../services/shop/testing/injected.ts";
import { mistyped } from "../../services/shop/testing/mistyped.ts";
import { addBit, addSomebody, made } from "./crib.ts";
import { furnish } from "./furnish.ts";
import { type Answer, openShop, type Shop } from "./shop.ts";

/** Asked so often, a read is answered from what was sent before, if it ever is. */
const OFTEN = 4;

let shop: Shop;
let bit: { id: string };
let now: number;

beforeEach(async () => {
  now = Date.parse("2026-03-02T08:00:00Z");
  shop = await openShop({}, () => new Date(now));
  bit = await addBit(shop, { name: "Café, 89 mm" });
});

type Asking = Parameters<Shop["ask"]>[2];

async function often(url: string, asking: Asking = {}): Promise<Answer[]> {
  const answers: Answer[] = [];
  for (let time = 0; time < OFTEN; time += 1) answers.push(await shop.ask("GET", url, asking));
  return answers;
}

/** An answer that is no document of its own, or no text. */
const raw = ({
  headers,
  ...asked
}: Pick<Parameters<typeof injected>[1], "headers"> & { method: "GET" | "HEAD"; url: string }) =>
  injected(shop.app, { ...asked, headers: { authorization: `Bearer ${shop.managerKey}`, ...headers } });

const OF_ONE_REQUEST = ["x-request-id", "ratelimit", "date", "traceparent"];

/** An answer without what another request's answer has otherwise. */
function lasting({ status, headers, text }: Answer) {
  const lasting = Object.entries(headers).filter(([name]) => !OF_ONE_REQUEST.includes(name));
  return { status, headers: Object.fromEntries(lasting.sort()), text };
}

describe("what is asked again", () => {
  test.each([
    ["a record", () => `/v1/bits/${bit.id}`],
    ["a list", () => "/v1/bits?limit=1"],
    ["a search", () => "/v1/bits?q=cafe"],
  ])("%s is answered as the first time, with every header", async (_what, url) => {
    await addBit(shop);
    const [first, ...again] = (await often(url())).map(lasting);
    expect(first).toMatchObject({ status: 200 });
    expect(again).toEqual(Array(OFTEN - 1).fill(first));
  });

  test("is answered under the ids of each request, and counted", async () => {
    const traceparent = `00-${"a".repeat(32)}-${"b".repeat(16)}-01`;
    const headers = { "x-request-id": "mine", traceparent };
    const ids = (await often("/v1/bits")).map((answer) => answer.headers["x-request-id"]);
    expect(new Set(ids).size).toBe(OFTEN);
    const own = await often("/v1/bits", { headers });
    expect(own.map((answer) => [answer.headers["x-request-id"], answer.headers["traceparent"]])).toEqual(
      Array(OFTEN).fill(["mine", traceparent]),
    );
    const left = own.map(({ headers: { ratelimit = "" } }) => Number(/r=(\d+)/.exec(ratelimit)?.[1]));
    expect(left).toEqual(Array.from({ length: OFTEN }, (_, index) => (left[0] ?? 0) - index));
  });

  test("is measured and logged like any other request", async () => {
    await often("/v1/bits");
    const lines = shop
      .log()
      .split("\n")
      .filter((line) => line.includes('"url":"/v1/bits"'));
    const logged = lines.map((line) => JSON.parse(line)).filter(({ method }) => method === "GET");
    expect(logged).toHaveLength(OFTEN);
    const { time: _, reqId: _id, responseTimeMs: _ms, ...first } = logged[0];
    for (const { time, reqId, responseTimeMs, ...line } of logged) {
      expect(line).toEqual(first);
      expect([typeof time, typeof reqId, typeof responseTimeMs]).toEqual(["number", "string", "number"]);
    }
    const metrics = await shop.ask("GET", "/metrics");
    expect(metrics.text).toMatch(
      new RegExp(`duration_seconds_count\\{method="GET",route="/v1/bits",status="200"\\} ${OFTEN}\n`),
    );
  });

  test("is another answer as soon as something has changed", async () => {
    await often(`/v1/bits/${bit.id}`);
    const changed = await shop.ask("PATCH", `/v1/bits/${bit.id}`, {
      body: { name: "Renamed" },
      headers: { "If-Match": '"1"' },
    });
    expect(changed.status).toBe(200);
    const answers = await often(`/v1/bits/${bit.id}`);
    expect(answers.map(({ body, headers }) => [body.name, headers["etag"]])).toEqual(
      Array(OFTEN).fill(["Renamed", '"2"']),
    );
  });

  test("is what each may see, whoever asked before", async () => {
    const { keys } = await furnish((path, body, key) => made(shop, path, body, key));
    const { key: another } = await addSomebody(shop, "member");
    const seen = async (key: string) =>
      (await often("/v1/courses", { key })).map(({ body }) => body.data.length);
    expect(await seen(keys.manager)).toEqual(Array(OFTEN).fill(1));
    expect(await seen(another)).toEqual(Array(OFTEN).fill(0));
    expect(await seen(keys.student)).toEqual(Array(OFTEN).fill(1));
  });

  test("is refused to a key that may not read it, that has expired, was revoked or never was", async () => {
    const statuses = async (key: string | null) =>
      new Set((await often("/v1/bits", { key })).map(({ status }) => status));
    const { id: personId } = await made(shop, "/v1/people", { name: "A member", role: "member" });
    const keyOf = (more: object) => made(shop, "/v1/keys", { name: "Tablet", personId, ...more });
    const narrow = await keyOf({ scopes: ["routers:read"] });
    const brief = await keyOf({ expiresAt: new Date(now + 60_000).toISOString() });
    const revoked = await keyOf({});
    await often("/v1/bits");
    expect(await statuses(narrow.key)).toEqual(new Set([403]));
    expect(await statuses(null)).toEqual(new Set([401]));
    expect(await statuses(mistyped(shop.managerKey))).toEqual(new Set([401]));
    expect(await statuses(brief.key)).toEqual(new Set([200]));
    now += 60_001;
    expect(await statuses(brief.key)).toEqual(new Set([401]));
    expect(await statuses(revoked.key)).toEqual(new Set([200]));
    await shop.ask("POST", `/v1/keys/${revoked.id}/revoke`, { body: {}, headers: { "If-Match": "*" } });
    expect(await statuses(revoked.key)).toEqual(new Set([401]));
  });

  test("is what it was when something else is done at the same address", async () => {
    await often(`/v1/bits/${bit.id}`);
    const removed = await shop.ask("DELETE", `/v1/bits/${bit.id}`, { headers: { "If-Match": "*" } });
    expect(removed.status).toBe(204);
    expect((await often(`/v1/bits/${bit.id}`)).map(({ status }) => status)).toEqual(Array(OFTEN).fill(404));
  });

  test("is a 304 to whoever has it, and without its body to HEAD", async () => {
    await often(`/v1/bits/${bit.id}`);
    const headers = { "If-None-Match": '"1"' };
    const known = await often(`/v1/bits/${bit.id}`, { headers });
    expect(known.map(({ status, text }) => [status, text])).toEqual(Array(OFTEN).fill([304, ""]));
    const head = await raw({ method: "HEAD", url: `/v1/bits/${bit.id}` });
    expect([head.statusCode, head.payload]).toEqual([200, ""]);
  });

  test("is compressed for whoever accepts it, and only for them", async () => {
    for (let count = 0; count < 5; count += 1) await addBit(shop);
    const { text } = await shop.ask("GET", "/v1/bits");
    const readAs = async (encoding: string | undefined, read: (payload: Buffer) => Buffer) => {
      for (let time = 0; time < OFTEN; time += 1) {
        const accepted = encoding === undefined ? {} : { "accept-encoding": encoding };
        const { headers, rawPayload } = await raw({ method: "GET", url: "/v1/bits", headers: accepted });
        expect(headers["content-encoding"]).toBe(encoding);
        expect(String(read(rawPayload))).toBe(text);
      }
    };
    await readAs(undefined, (payload) => payload);
    await readAs("gzip", gunzipSync);
    await readAs(undefined, (payload) => payload);
    await readAs("br", brotliDecompressSync);
  });
});

test("asking again and again ends with a 429, as asking anything else", async () => {
  const strict = await openShop({ RIMWISE_RATE_LIMIT_PER_MINUTE: "6" });
  const statuses: number[] = [];
  for (let time = 0; time < 8; time += 1) statuses.push((await strict.ask("GET", "/v1/bits")).status);
  expect(statuses).toEqual([200, 200, 200, 200, 200, 200, 429, 429]);
});

test("a page of a listed origin may read the answers to what it asks again", async () => {
  const open = await openShop({ RIMWISE_CORS_ORIGINS: "https://tablet.test" });
  const url = "/v1/bits";
  const origins: unknown[] = [];
  for (let time = 0; time < OFTEN; time += 1) {
    for (const origin of [undefined, "https://tablet.test"]) {
      const { headers } = await open.ask("GET", url, origin === undefined ? {} : { headers: { origin } });
      origins.push(headers["access-control-allow-origin"]);
    }
  }
  expect(origins).toEqual(Array(OFTEN).fill([undefined, "https://tablet.test"]).flat());
});

test("behind a trusted proxy the log names the caller each time", async () => {
  const proxied = await openShop({ RIMWISE_TRUSTED_PROXIES: "127.0.0.1" });
  for (let time = 0; time < OFTEN; time += 1)
    await proxied.ask("GET", "/v1/bits", { headers: { "x-forwarded-for": "198.51.100.7" } });
  const addresses = proxied
    .log()
    .split("\n")
    .filter((line) => line.includes('"url":"/v1/bits"'))
    .map((line) => JSON.parse(line).ip);
  expect(addresses).toEqual(Array(OFTEN).fill("198.51.100.7"));
});
