import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { answering, json, problem } from "../testing/scripted-service.ts";
import { ApiError, ConnectionError, TimeoutError, Unauthorized } from "./errors.ts";
import type { LogEntry } from "./log.ts";
import type { CallOptions } from "./operation.ts";
import { type Fetch, settingsFrom } from "./options.ts";
import { createCaller } from "./request.ts";

type Item = { readonly n: number };

const logged: LogEntry[] = [];

beforeEach(() => {
  vi.useFakeTimers();
  vi.spyOn(Math, "random").mockReturnValue(0);
  logged.length = 0;
});

afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

function follow(fetch: Fetch, options: CallOptions = {}) {
  const settings = settingsFrom({
    baseUrl: "http://shop.test",
    key: "k3y",
    fetch,
    log: (entry) => logged.push(entry),
  });
  const stream = { method: "GET", path: "/v1/events/stream", query: { after: 7 } } as const;
  return createCaller(settings).follow<Item>(stream, options);
}

/** A stream of these messages, which then ends, breaks, or stays open. */
function streaming(numbers: number[], then: "ends" | "breaks" | "stays" = "ends"): Response {
  const text = numbers.map((n) => `id: ${n}\ndata: ${JSON.stringify({ n })}\n\n`).join("");
  const parts = [new TextEncoder().encode(text)];
  const body = new ReadableStream({
    pull: (controller) => {
      const part = parts.shift();
      if (part !== undefined) controller.enqueue(part);
      else if (then === "ends") controller.close();
      else if (then === "breaks") controller.error(new TypeError("terminated"));
      else return new Promise(() => {});
      return undefined;
    },
  });
  return new Response(body, { headers: { "content-type": "text/event-stream; charset=utf-8" } });
}

/** Takes so many items, letting every timer pass in its turn. */
async function take(items: AsyncIterable<Item>, count: number) {
  const taken: number[] = [];
  const run = async () => {
    for await (const { n } of items) if (taken.push(n) === count) break;
  };
  const outcome = Promise.allSettled([run()]);
  await vi.advanceTimersByTimeAsync(300_000);
  const [first] = await outcome;
  return { taken, error: first.status === "rejected" ? first.reason : undefined };
}

describe("a stream that is followed", () => {
  it("goes on after the last item where it ended, broke, or could not be reached", async () => {
    const { fetch, requests } = answering(
      streaming([8, 9]),
      new TypeError("refused"),
      problem(503, "closing", { "retry-after": "5" }),
      streaming([10], "breaks"),
      streaming([11]),
    );
    expect(await take(follow(fetch), 4)).toEqual({ taken: [8, 9, 10, 11], error: undefined });
    expect(requests.map(({ headers }) => headers.get("last-event-id"))).toEqual([null, "9", "9", "9", "10"]);
    expect(requests[0]?.url).toBe("http://shop.test/v1/events/stream?after=7");
    expect(requests[0]?.headers.get("accept")).toContain("text/event-stream");
    expect(logged.map(({ retryInMs }) => retryInMs)).toEqual([500, 1000, 5000, 500]);
    expect(JSON.stringify(logged)).not.toContain("k3y");
  });

  it("is taken for broken when it says nothing for 45 s", async () => {
    const { fetch, requests } = answering(streaming([8], "stays"), streaming([9]));
    expect(await take(follow(fetch), 2)).toEqual({ taken: [8, 9], error: undefined });
    expect(requests[0]?.signal.aborted).toBe(true);
    expect(logged[0]?.error).toBeInstanceOf(TimeoutError);
  });

  it("is left when nobody iterates any more, with no timer behind", async () => {
    const { fetch, requests } = answering(streaming([8, 9], "stays"));
    expect((await take(follow(fetch), 1)).taken).toEqual([8]);
    expect(requests[0]?.signal.aborted).toBe(true);
    expect(vi.getTimerCount()).toBe(0);
  });

  it("ends with the caller's reason, during an answer, a stream or a wait", async () => {
    const gone = new Error("gone home");
    for (const answer of [
      () => new Promise<Response>(() => {}),
      streaming([], "stays"),
      new Error("refused"),
    ]) {
      const giving = new AbortController();
      setTimeout(() => giving.abort(gone), 100);
      const { error } = await take(follow(answering(answer).fetch, { signal: giving.signal }), 1);
      expect(error).toBe(gone);
      expect(vi.getTimerCount()).toBe(0);
    }
    const { fetch, requests } = answering();
    expect((await take(follow(fetch, { signal: AbortSignal.abort(gone) }), 1)).error).toBe(gone);
    expect(requests).toHaveLength(0);
  });

  it("is given up at once if asking again would not help", async () => {
    const refused = await take(follow(answering(problem(401, "key-not-valid")).fetch), 1);
    expect(refused.error).toBeInstanceOf(Unauthorized);
    const elsewhere = await take(follow(answering(json(200, { page: "of something else" })).fetch), 1);
    expect(elsewhere.error).toBeInstanceOf(ApiError);
    expect(elsewhere.error).toMatchObject({ status: 200, code: "unknown" });
  });

  it("is given up after as many failures in a row as the caller allows", async () => {
    const broken = () => streaming([], "breaks");
    const { fetch, requests } = answering(broken(), streaming([8]), broken());
    const { taken, error } = await take(follow(fetch, { retries: 1 }), 2);
    expect(taken).toEqual([8]);
    expect(error).toBeInstanceOf(ConnectionError);
    expect(requests).toHaveLength(3);
  });

  it("that never came about is reported after as many retries as every other call", async () => {
    const { fetch, requests } = answering(...[1, 2, 3].map(() => new TypeError("refused")));
    const { error } = await take(follow(fetch), 1);
    expect(error).toBeInstanceOf(ConnectionError);
    expect(error).toMatchObject({ call: { method: "GET", path: "/v1/events/stream", attempts: 3 } });
    expect(requests).toHaveLength(3);
    const busy = answering(...[1, 2].map(() => problem(503, "busy", { "retry-after": "1" })));
    expect((await take(follow(busy.fetch, { retries: 1 }), 1)).error).toMatchObject({ status: 503 });
  });
});
