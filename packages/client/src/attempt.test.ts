import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { answering, CREATE, json, problem, READ, send } from "../testing/scripted-service.ts";
import { settled } from "../testing/timers.ts";
import { TimeoutError } from "./errors.ts";

beforeEach(() => {
  vi.useFakeTimers();
  vi.spyOn(Math, "random").mockReturnValue(0);
});

afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

describe("a time-out", () => {
  const never = () => new Promise<Response>(() => {});
  const headOnly = async () => new Response(new ReadableStream({}), { status: 200 });

  it.each([
    ["no answer comes", never],
    ["the body never ends", headOnly],
  ])("ends an attempt if %s, and the next is made", async (_what, stuck) => {
    const { fetch, requests } = answering(stuck, json(200, { id: "bit_1" }));
    expect(await settled(send(fetch, READ, { timeoutMs: 100 }))).toEqual({ data: { id: "bit_1" } });
    expect(requests[0]?.signal.aborted).toBe(true);
  });

  it("is reported as such after the last attempt", async () => {
    const { fetch } = answering(never, never, never);
    const { error } = await settled(send(fetch, READ, { timeoutMs: 100 }));
    expect(error).toBeInstanceOf(TimeoutError);
    expect(error).toMatchObject({ timeoutMs: 100 });
  });

  it("is 30 s by default", async () => {
    const { fetch } = answering(never);
    expect((await settled(send(fetch, READ, { retries: 0 }))).error).toMatchObject({ timeoutMs: 30_000 });
  });

  it("is cut to what is left of the whole call", async () => {
    const { fetch, requests } = answering(never, never, never);
    const started = performance.now();
    await settled(send(fetch, READ, { timeoutMs: 600, deadlineMs: 1500 }));
    // 600 ms, a wait of 500 ms, and 400 ms of a second attempt.
    expect(requests).toHaveLength(2);
    expect(performance.now() - started).toBe(1500);
  });

  it("leaves no timer running after an answer", async () => {
    const { fetch } = answering(json(200, {}));
    await send(fetch, READ);
    expect(vi.getTimerCount()).toBe(0);
  });

  it.each([
    ["a body that somebody reads", (stream: ReadableStream) => void stream.getReader()],
    ["a body that was read", (stream: ReadableStream) => void stream.cancel()],
  ])("leaves no timer behind %s, which is sent nowhere", async (_what, spoil) => {
    const data = new Blob(["a"]).stream();
    spoil(data);
    const { fetch, requests } = answering();
    const giving = new AbortController();
    const listeners = vi.spyOn(giving.signal, "addEventListener");
    const released = vi.spyOn(giving.signal, "removeEventListener");
    const sending = send(
      fetch,
      { ...CREATE, body: undefined, data, contentType: "text/csv" },
      { signal: giving.signal },
    );
    await expect(sending).rejects.toThrow("give a fresh one");
    expect(vi.getTimerCount()).toBe(0);
    expect(requests).toHaveLength(0);
    expect(released.mock.calls.length).toBe(listeners.mock.calls.length);
  });
});

describe("a caller who gives up", () => {
  const gone = new Error("gone home");

  it("before the start sends nothing", async () => {
    const { fetch, requests } = answering();
    await expect(send(fetch, READ, { signal: AbortSignal.abort(gone) })).rejects.toBe(gone);
    expect(requests).toHaveLength(0);
  });

  it("during an attempt ends it, with no other", async () => {
    const { fetch, requests } = answering(() => new Promise(() => {}));
    const giving = new AbortController();
    const call = send(fetch, READ, { signal: giving.signal });
    setTimeout(() => giving.abort(gone), 50);
    expect((await settled(call)).error).toBe(gone);
    expect(requests).toHaveLength(1);
  });

  it("during a wait ends it, with no other attempt and no timer left", async () => {
    const { fetch, requests } = answering(problem(500, "internal"));
    const giving = new AbortController();
    const outcome = Promise.allSettled([send(fetch, READ, { signal: giving.signal })]);
    setTimeout(() => giving.abort(gone), 50);
    await vi.advanceTimersByTimeAsync(50);
    expect(vi.getTimerCount()).toBe(0);
    expect(await outcome).toEqual([{ status: "rejected", reason: gone }]);
    expect(requests).toHaveLength(1);
  });
});
