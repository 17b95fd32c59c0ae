import { afterEach, expect, vi } from "vitest";

// A test that prints is a test nobody reads: any console output fails it.
const spies = (["log", "info", "warn", "error", "debug"] as const).map((method) => vi.spyOn(console, method));

afterEach(() => {
  for (const spy of spies) {
    expect(spy, "console output in a test").not.toHaveBeenCalled();
    spy.mockClear();
  }
});
