import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { answering, CHANGE, CREATE, json, problem, READ, send } from "../testing/scripted-service.ts";
import { settled } from "../testing/timers.ts";
import { NotFound } from "./errors.ts";
import type { LogEntry } from "./log.ts";

beforeEach(() => {
  vi.useFakeTimers();
  vi.spyOn(Math, "random").mockReturnValue(0);
});

afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

describe("a call", () => {
  it("sends the key, the path, the query and the body, and gives the data", async () => {
    const { fetch, requests } = answering(json(201, { id: "bit_1" }));
    const data = await send(fetch, {
      ...CREATE,
      query: { units: "metric", none: undefined, tag: ["a", "b c"] },
    });
    expect(data).toEqual({ id: "bit_1" });
    const [request] = requests;
    expect(request?.method).toBe("POST");
    expect(request?.url).toBe("http://shop.test/v1/bits?units=metric&tag=a%2Cb+c");
    expect(request?.headers.get("authorization")).toBe("Bearer k3y");
    expect(request?.headers.get("content-type")).toBe("application/json");
    expect(await request?.json()).toEqual({ name: "Cove" });
    expect(request?.redirect).toBe("manual");
  });

  it("gives what came with the data on demand", async () => {
    const headers = { etag: '"3"', "x-request-id": "r9", "idempotent-replayed": "true" };
    const { fetch } = answering(json(200, { id: "bit_1" }, headers));
    const { data, response } = await send(fetch, READ).withResponse();
    expect(data).toEqual({ id: "bit_1" });
    expect(response).toMatchObject({ status: 200, etag: '"3"', requestId: "r9", isReplayed: true });
  });

  it("rejects once, not twice, when only what came with the data is awaited", async () => {
    const { fetch } = answering(problem(404, "not-found"));
    await expect(send(fetch, READ).withResponse()).rejects.toBeInstanceOf(NotFound);
  });

  it("gives nothing for 204 and text for text", async () => {
    const { fetch } = answering(
      new Response(null, { status: 204 }),
      new Response("up 1", { headers: { "content-type": "text/plain" } }),
    );
    expect(await send(fetch, { ...READ, answers: [] })).toBeUndefined();
    expect(await send(fetch, { ...READ, answers: ["text/plain"] })).toBe("up 1");
  });

  it.each([
    [3, '"3"'],
    ["3", '"3"'],
    ['"3"', '"3"'],
    ["*", "*"],
  ])("names the version %j as %s", async (ifMatch, header) => {
    const { fetch, requests } = answering(json(200, {}));
    await send(fetch, CHANGE, { ifMatch });
    expect(requests[0]?.headers.get("if-match")).toBe(header);
  });

  it("refuses a path parameter that would name another path, before anything is sent", async () => {
    const { fetch, requests } = answering();
    for (const bitId of ["", ".", ".."]) {
      await expect(send(fetch, { ...READ, pathParameters: { bitId } })).rejects.toBeInstanceOf(TypeError);
    }
    expect(requests).toHaveLength(0);
  });
});

describe("the log", () => {
  it("reports every attempt and never the key", async () => {
    const { fetch } = answering(problem(500, "internal"), json(200, {}));
    const entries: LogEntry[] = [];
    await settled(
      send(fetch, READ, { headers: { traceparent: "t1" } }, { log: (entry) => entries.push(entry) }),
    );
    expect(entries).toMatchObject([
      {
        attempt: 1,
        method: "GET",
        url: "http://shop.test/v1/bits/bit_1",
        error: { status: 500 },
        retryInMs: 500,
      },
      { attempt: 2, status: 200, headers: { authorization: "[redacted]", traceparent: "t1" } },
    ]);
    expect(JSON.stringify(entries)).not.toContain("k3y");
  });

  it("shows no cookie and no key of any name, but the Idempotency-Key", async () => {
    const { fetch } = answering(json(201, {}));
    const entries: LogEntry[] = [];
    const headers = { cookie: "c1", "x-api-key": "k2", "x-auth-token": "t3" };
    const options = { headers, idempotencyKey: "order-7" };
    await send(fetch, CREATE, options, { log: (entry) => entries.push(entry) });
    expect(entries[0]?.headers).toMatchObject({
      ...{ cookie: "[redacted]", "x-api-key": "[redacted]", "x-auth-token": "[redacted]" },
      "idempotency-key": "order-7",
    });
  });

  it("breaks nothing if it throws", async () => {
    const { fetch } = answering(json(200, { id: "bit_1" }));
    const log = () => {
      throw new Error("the disk is full");
    };
    expect(await send(fetch, READ, {}, { log })).toEqual({ id: "bit_1" });
  });
});
