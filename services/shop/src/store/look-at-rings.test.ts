import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { newBell } from "./bell.ts";
import { lookAtRings } from "./look-at-rings.ts";

const A_WHILE_MS = 10_000;

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

/** Looks that each go on until they are let go. */
function looks() {
  const waiting: (() => void)[] = [];
  let begun = 0;
  return {
    look: () => {
      begun += 1;
      return new Promise<void>((resolve) => void waiting.push(resolve));
    },
    begun: () => begun,
    letGo: () => waiting.shift()?.(),
  };
}

test("the first ring is looked at once, and all that ring meanwhile by one look after it", async () => {
  const bell = newBell();
  const { look, begun, letGo } = looks();
  lookAtRings(bell, look);
  bell.ring();
  expect(begun()).toBe(1);
  for (let count = 0; count < 64; count += 1) bell.ring();
  await vi.advanceTimersByTimeAsync(A_WHILE_MS);
  expect(begun()).toBe(1);
  letGo();
  await vi.advanceTimersByTimeAsync(0);
  for (let count = 0; count < 64; count += 1) bell.ring();
  expect(begun()).toBe(1);
  await vi.advanceTimersByTimeAsync(A_WHILE_MS);
  expect(begun()).toBe(2);
  letGo();
  await vi.advanceTimersByTimeAsync(A_WHILE_MS);
  expect(begun()).toBe(2);
  bell.ring();
  expect(begun()).toBe(3);
});

test("at the end the look under way is waited for, and no other is made: it says whether one would be", async () => {
  const bell = newBell();
  const { look, begun, letGo } = looks();
  const end = lookAtRings(bell, look);
  bell.ring();
  bell.ring();
  let hasRungSince: boolean | undefined;
  const ending = end().then((has) => {
    hasRungSince = has;
  });
  await vi.advanceTimersByTimeAsync(A_WHILE_MS);
  expect(hasRungSince).toBeUndefined();
  letGo();
  await ending;
  expect(hasRungSince).toBe(true);
  bell.ring();
  await vi.advanceTimersByTimeAsync(A_WHILE_MS);
  expect(begun()).toBe(1);
});

test("at the end nobody waits for the rest after a look", async () => {
  const bell = newBell();
  const end = lookAtRings(bell, async () => {});
  bell.ring();
  await Promise.resolve();
  expect(vi.getTimerCount()).toBe(1);
  expect(await end()).toBe(false);
  expect(vi.getTimerCount()).toBe(0);
});
