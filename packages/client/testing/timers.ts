import { vi } from "vitest";

/** Runs a call to its end, letting every timer pass in its turn. */
export async function settled<Result>(call: Promise<Result>) {
  const outcome = Promise.allSettled([call]);
  await vi.runAllTimersAsync();
  const [first] = await outcome;
  return first.status === "fulfilled" ? { data: first.value } : { error: first.reason };
}
