import { describe, expect, it } from "vitest";
import { urlOf } from "./url.ts";

const READ = { method: "GET", path: "/v1/bits/{bitId}" } as const;

describe("the URL of an operation", () => {
  it.each([
    ["bit_1", "bit_1"],
    ["a/b", "a%2Fb"],
    ["../keys", "..%2Fkeys"],
    ["a?b#c", "a%3Fb%23c"],
    ["%2e%2e", "%252e%252e"],
    ["Ø 90 mm", "%C3%98%2090%20mm"],
  ])("carries the id %j whole", (bitId, encoded) => {
    const url = urlOf("http://shop.test", { ...READ, pathParameters: { bitId } });
    expect(url).toBe(`http://shop.test/v1/bits/${encoded}`);
    expect(new URL(url).pathname.split("/")).toHaveLength(4);
  });

  it.each(["", ".", ".."])("refuses the id %j, which would name another path", (bitId) => {
    expect(() => urlOf("http://shop.test", { ...READ, pathParameters: { bitId } })).toThrow(TypeError);
  });

  it("refuses an id that was left out", () => {
    expect(() => urlOf("http://shop.test", READ)).toThrow("bitId");
  });

  it("keeps the path the service stands under", () => {
    const url = urlOf("https://example.test/shop", { ...READ, pathParameters: { bitId: "b" } });
    expect(url).toBe("https://example.test/shop/v1/bits/b");
  });
});
