import { inflateSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { bitsOf, packed, statusPayload } from "./pack.ts";

const AT = new Date("2026-03-02T08:00:00Z");

describe("a status list", () => {
  // The example of one bit a token in draft-ietf-oauth-status-list, section 4.1 (from memory; it inflates to the bytes given there).
  test("packs the draft's example as the draft does", () => {
    const bits = bitsOf([0, 3, 4, 5, 7, 8, 9, 13, 15], 16);
    expect([...bits]).toEqual([0xb9, 0xa3]);
    const lst = "eNrbuRgAAhcBXQ";
    expect([...inflateSync(Buffer.from(lst, "base64url"))]).toEqual([0xb9, 0xa3]);
    expect(packed(bits)).toBe(lst);
  });

  test("of two hundred thousand ended settings names every one, and no other", () => {
    const count = 400_000;
    const even = Array.from({ length: count / 2 }, (_, index) => index * 2);
    const payload = Object(statusPayload(even, count, "https://shop.example/v1/approvals/status", AT));
    const bytes = inflateSync(Buffer.from(payload.status_list.lst, "base64url"));
    expect([...bytes.subarray(0, count / 8)].every((byte) => byte === 0b0101_0101)).toBe(true);
    expect(bytes.subarray(count / 8).every((byte) => byte === 0)).toBe(true);
  });

  test("has room for 131,072 settings to come, and costs little while nothing ended", () => {
    for (const places of [0, 1, 131_072, 1_000_000]) {
      const { status_list } = Object(statusPayload([], places, "https://shop.example", AT));
      const length = inflateSync(Buffer.from(status_list.lst, "base64url")).length * 8;
      expect(length).toBeGreaterThanOrEqual(places + 131_072);
      expect(status_list.lst.length).toBeLessThan(400);
    }
  });
});
