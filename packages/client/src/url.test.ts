import { describe, expect, it } from "vitest";
import { pathOf } from "./url.ts";

const READ = { method: "GET", path: "/v1/bits/{bitId}" } as const;

describe("the path of an operation", () => {
  it.each([
    ["bit_1", "bit_1"],
    ["a/b", "a%2Fb"],
    ["../keys", "..%2Fkeys"],
    ["a?b#c", "a%3Fb%23c"],
    ["%2e%2e", "%252e%252e"],
    ["Ø 90 mm", "%C3%98%2090%20mm"],
  ])("carries the id %j whole", (bitId, encoded) => {
    for (const operation of [
      { ...READ, pathParameters: { bitId } },
      { path: "/v1/bits/{}", ids: [bitId] },
    ]) {
      const path = pathOf(operation);
      expect(path).toBe(`/v1/bits/${encoded}`);
      expect(new URL(path, "http://shop.test").pathname.split("/")).toHaveLength(4);
    }
  });

  it.each(["", ".", ".."])("refuses the id %j, which would name another path", (bitId) => {
    expect(() => pathOf({ ...READ, pathParameters: { bitId } })).toThrow(TypeError);
  });

  it("refuses an id that was left out", () => {
    expect(() => pathOf(READ)).toThrow("{bitId} of /v1/bits/{bitId} must be an id");
    expect(() => pathOf({ path: "/v1/bits/{}" })).toThrow("{} of /v1/bits/{} must be an id");
  });
});
