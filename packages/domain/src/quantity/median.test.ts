import { describe, expect, it } from "vitest";
import { median } from "./median.ts";

describe("the median", () => {
  it.each([
    [[], undefined],
    [[4], 4],
    [[3, 1, 2], 2],
    [[10, 1, 3, 2], 2.5],
    [[100, 9, 20], 20],
  ])("of %j is %s", (values, want) => {
    expect(median(values)).toBe(want);
  });
});
