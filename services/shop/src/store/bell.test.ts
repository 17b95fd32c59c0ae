import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { newBell } from "./bell.ts";

/** As nobody else waits who shares this test's thread. */
const WAIT_MS = 7919;

beforeEach(() => {
  vi.useFakeTimers();
  vi.spyOn(globalThis, "setTimeout");
  vi.spyOn(globalThis, "clearTimeout");
});

afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

/** The timers of waits, and how many of them were never taken back. */
function timersOfWaits() {
  const { calls, results } = vi.mocked(setTimeout).mock;
  const made = results.filter((_, index) => calls[index]?.[1] === WAIT_MS).map(({ value }) => value);
  const takenBack = vi.mocked(clearTimeout).mock.calls.map(([timer]) => timer);
  return { made: made.length, left: made.filter((timer) => !takenBack.includes(timer)).length };
}

const never = new AbortController().signal;

describe("whoever waits for the bell", () => {
  test("is woken by it, all at once", async () => {
    const bell = newBell();
    const waits = [bell.wait(0, WAIT_MS, never), bell.wait(0, WAIT_MS, never)];
    bell.ring();
    expect(await Promise.all(waits)).toEqual([true, true]);
    expect(timersOfWaits()).toEqual({ made: 2, left: 0 });
  });

  test("does not wait if it has rung since they last heard it", async () => {
    const bell = newBell();
    const heard = bell.rings();
    bell.ring();
    expect(await bell.wait(heard, WAIT_MS, never)).toBe(true);
  });

  test("hears when it does not ring in time, or when the wait is ended", async () => {
    const bell = newBell();
    const late = bell.wait(0, WAIT_MS, never);
    await vi.advanceTimersByTimeAsync(WAIT_MS);
    expect(await late).toBe(false);
    const ending = new AbortController();
    const ended = bell.wait(0, WAIT_MS, ending.signal);
    ending.abort();
    expect(await ended).toBe(false);
    expect(await bell.wait(0, WAIT_MS, AbortSignal.abort())).toBe(false);
    expect(timersOfWaits()).toEqual({ made: 3, left: 0 });
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
