import { expect, test } from "vitest";
import { differencesBetween } from "./difference.ts";

test("each differing place is named once, with what each side has there", () => {
  const before = {
    speed: { rpm: 10400, "a/b": 1 },
    passes: [{ heightMm: 4 }, { heightMm: 9.8 }],
    same: [1, { x: null }],
  };
  const after = {
    speed: { rpm: 9900, "a/b": 2 },
    passes: [{ heightMm: 4.2 }],
    same: [1, { x: null }],
    more: "x",
  };
  expect(differencesBetween(before, after)).toEqual([
    { pointer: "/speed/rpm", before: 10400, after: 9900 },
    { pointer: "/speed/a~1b", before: 1, after: 2 },
    { pointer: "/passes/0/heightMm", before: 4, after: 4.2 },
    { pointer: "/passes/1", before: { heightMm: 9.8 } },
    { pointer: "/more", after: "x" },
  ]);
  expect(differencesBetween(before, structuredClone(before))).toEqual([]);
  expect(differencesBetween([1], { 0: 1 })).toEqual([{ pointer: "", before: [1], after: { 0: 1 } }]);
});
