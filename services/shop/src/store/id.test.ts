import { afterEach, describe, expect, it, vi } from "vitest";
import { newId, newUuid } from "./id.ts";

/** RFC 9562, section 5.7: version 7 and variant 10. */
const UUID_V7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

describe("a new UUID", () => {
  afterEach(() => vi.useRealTimers());

  it("is of version 7 and begins with the time in milliseconds", () => {
    vi.useFakeTimers({ now: new Date("2100-01-01T00:00:00.000Z") });
    const uuid = newUuid();
    expect(uuid).toMatch(UUID_V7);
    expect(Number.parseInt(uuid.replaceAll("-", "").slice(0, 12), 16)).toBe(
      Date.parse("2100-01-01T00:00:00.000Z"),
    );
  });

  it("is never one that was there before, and sorts after all that were", () => {
    const many = Array.from({ length: 5000 }, newUuid);
    expect(new Set(many).size).toBe(many.length);
    expect([...many].sort()).toEqual(many);
  });

  it("sorts after earlier ones when the clock goes back", () => {
    vi.useFakeTimers({ now: new Date("2100-01-02T00:00:00.000Z") });
    const before = newUuid();
    vi.setSystemTime(new Date("2100-01-01T00:00:00.000Z"));
    expect(newUuid() > before).toBe(true);
  });

  it("ends in bytes of its own", () => {
    const ends = Array.from({ length: 1000 }, () => newUuid().slice(-10));
    expect(new Set(ends).size).toBe(ends.length);
  });
});

describe("a new id", () => {
  it("is a prefix and 32 hexadecimal digits", () => {
    expect(newId("bit")).toMatch(/^bit_[0-9a-f]{32}$/);
  });
});
