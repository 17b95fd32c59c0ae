import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { newBell, ringingAfter } from "./bell.ts";

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

const never = new AbortController().signal;

describe("whoever waits for the bell", () => {
  test("is woken by it, all at once", async () => {
    const bell = newBell();
    const waits = [bell.wait(0, 1000, never), bell.wait(0, 1000, never)];
    bell.ring();
    expect(await Promise.all(waits)).toEqual([true, true]);
    expect(vi.getTimerCount()).toBe(0);
  });

  test("does not wait where it has rung since they last heard it", async () => {
    const bell = newBell();
    const heard = bell.rings();
    bell.ring();
    expect(await bell.wait(heard, 1000, never)).toBe(true);
  });

  test("is told when it does not ring in time, or when the wait is ended", async () => {
    const bell = newBell();
    const late = bell.wait(0, 1000, never);
    await vi.advanceTimersByTimeAsync(1000);
    expect(await late).toBe(false);
    const ending = new AbortController();
    const ended = bell.wait(0, 1000, ending.signal);
    ending.abort();
    expect(await ended).toBe(false);
    expect(await bell.wait(0, 1000, AbortSignal.abort())).toBe(false);
    expect(vi.getTimerCount()).toBe(0);
  });
});

test("it rings after what was committed and changed something, and after nothing else", async () => {
  const bell = newBell();
  const stamp = { by: "key_1", at: "2026-03-02T08:00:00.000Z", requestId: "r-1" };
  const removal = { action: "remove", type: "bit", id: "bit_1", expectedVersion: 1 } as const;
  const changes = [{ ...removal, event: { type: "bit.removed", data: {} } }];
  const commit = ringingAfter(async ({ stamp: { by } }) => {
    if (by === "full") throw new Error("the disk is full");
    return by === "late" ? { kind: "answered" } : { kind: "committed" };
  }, bell);
  await commit({ stamp, changes: [] });
  await commit({ stamp: { ...stamp, by: "late" }, changes });
  await expect(commit({ stamp: { ...stamp, by: "full" }, changes })).rejects.toThrow("full");
  expect(bell.rings()).toBe(0);
  await commit({ stamp, changes });
  expect(bell.rings()).toBe(1);
});
