import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { newBell } from "./bell.ts";

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

  test("does not wait if it has rung since they last heard it", async () => {
    const bell = newBell();
    const heard = bell.rings();
    bell.ring();
    expect(await bell.wait(heard, 1000, never)).toBe(true);
  });

  test("hears when it does not ring in time, or when the wait is ended", async () => {
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

test("whoever listens is called at every ring, until they no longer listen", () => {
  const bell = newBell();
  let called = 0;
  const deafen = bell.listen(() => {
    called += 1;
  });
  bell.ring();
  bell.ring();
  deafen();
  bell.ring();
  expect(called).toBe(2);
});
