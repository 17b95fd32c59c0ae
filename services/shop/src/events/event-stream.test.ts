import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { newBell } from "../store/bell.ts";
import { eventStream, HEARTBEAT_MS } from "./event-stream.ts";
import type { EventRecord } from "./schema.ts";

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

const event = (sequence: number): EventRecord => ({
  sequence,
  at: "2026-03-02T08:00:00.000Z",
  by: "key_1",
  requestId: "r-1",
  type: "bit.changed",
  subjectId: "bit_1",
  subjectVersion: 2,
  data: { after: { notes: "two\nlines\r\n\u2028and more" } },
  previousHash: "0".repeat(64),
  hash: "1".repeat(64),
});

function streamOf(kept: EventRecord[], mayGoOn = async () => true) {
  const bell = newBell();
  const ending = new AbortController();
  const page = vi.fn(async (after: number, most: number) =>
    kept.filter(({ sequence }) => sequence > after).slice(0, most),
  );
  return { bell, ending, page, stream: eventStream(0, ending.signal, { page, bell, mayGoOn }) };
}

test("an event is one message, whatever its text holds", async () => {
  const { stream } = streamOf([event(1)]);
  expect((await stream.next()).value).toBe("retry: 1000\n\n");
  const { value } = await stream.next();
  const [, data = ""] = /^id: 1\nevent: bit\.changed\ndata: ([^\r\n]*)\n\n$/.exec(String(value)) ?? [];
  expect(JSON.parse(data)).toEqual(event(1));
});

test("nothing is read ahead of what is taken", async () => {
  const kept = Array.from({ length: 1000 }, (_, index) => event(index + 1));
  const { stream, page } = streamOf(kept);
  for (let taken = 0; taken < 101; taken += 1) await stream.next();
  expect(page).toHaveBeenCalledTimes(1);
});

test("silence is broken by a comment, and no beat is lost to an event that comes between", async () => {
  const kept: EventRecord[] = [];
  const { stream, bell } = streamOf(kept);
  await stream.next();
  const beat = stream.next();
  await vi.advanceTimersByTimeAsync(HEARTBEAT_MS);
  expect((await beat).value).toBe(": nothing new\n\n");
  const next = stream.next();
  await vi.advanceTimersByTimeAsync(HEARTBEAT_MS / 2);
  kept.push(event(1));
  bell.ring();
  expect((await next).value).toMatch(/^id: 1\n/);
});

test("an event of another process is found at the next beat, though no bell rang", async () => {
  const kept: EventRecord[] = [];
  const { stream } = streamOf(kept);
  await stream.next();
  const beat = stream.next();
  await vi.advanceTimersByTimeAsync(HEARTBEAT_MS - 1);
  kept.push(event(1));
  await vi.advanceTimersByTimeAsync(1);
  await beat;
  expect((await stream.next()).value).toMatch(/^id: 1\n/);
});

test("it ends when asked to, also during a wait, and for a caller who may no longer read", async () => {
  const { stream, ending } = streamOf([]);
  await stream.next();
  const last = stream.next();
  ending.abort();
  expect(await last).toEqual({ done: true, value: undefined });
  expect(vi.getTimerCount()).toBe(0);
  const { stream: revoked } = streamOf([event(1)], async () => false);
  await revoked.next();
  expect((await revoked.next()).done).toBe(true);
});
