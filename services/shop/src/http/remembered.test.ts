import { describe, expect, it } from "vitest";
import { remembered } from "./remembered.ts";

describe("what was found", () => {
  it("is recalled at its mark, each thing by itself", () => {
    const { recall, keep, has } = remembered<{ found: string }>();
    expect([recall(1, "a"), has("a")]).toEqual([undefined, false]);
    keep(1, "a", { found: "a" });
    keep(1, "b", { found: "b" });
    expect([recall(1, "a"), recall(1, "b"), has("a")]).toEqual([{ found: "a" }, { found: "b" }, true]);
  });

  it("is not recalled at another mark, nor when that has come back to an earlier one", () => {
    const { recall, keep } = remembered<{ found: number }>();
    keep("one", "a", { found: 1 });
    expect(recall("two", "a")).toBeUndefined();
    keep("two", "a", { found: 2 });
    expect([recall("one", "a"), recall("two", "a")]).toEqual([undefined, { found: 2 }]);
  });

  it("goes on to another mark by a step from its own, and by no other", () => {
    const { recall, keep, advance } = remembered<{ found: number }>();
    keep("one", "a", { found: 1 });
    advance("two", "three");
    expect(recall("three", "a")).toBeUndefined();
    advance("one", "two");
    expect([recall("one", "a"), recall("two", "a")]).toEqual([undefined, { found: 1 }]);
  });

  it("is forgotten rather than that it fills the memory", () => {
    const { recall, keep } = remembered<{ found: number }>();
    for (let index = 0; index < 3000; index += 1) keep(1, `guess ${index}`, { found: index });
    expect(recall(1, "guess 0")).toBeUndefined();
    expect(recall(1, "guess 2999")).toEqual({ found: 2999 });
  });
});
