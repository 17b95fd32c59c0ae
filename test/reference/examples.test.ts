import { describe, expect, it } from "vitest";
import { docstringExamples, readmeExample, run } from "./examples.ts";

describe("the example in the docstring", () => {
  it.each([...docstringExamples()])("of %s calls it and gives the answer it says", (name, example) => {
    expect(example).toContain(`${name}(`);
    expect(run(example)).toBeGreaterThan(0);
  });
});

it("the code in the domain's README gives the answers it says", () => {
  expect(run(readmeExample())).toBeGreaterThan(3);
});

describe("an example", () => {
  it("with a wrong answer fails, and a number only counts to the decimals written", () => {
    expect(() => run("rimSpeedMPerS(60, 10_000) // → 31.5")).toThrow();
    expect(() => run('parseLength("1 in") // → { ok: true, mm: 25 }')).toThrow();
    expect(run("rimSpeedMPerS(60, 10_000) // → 31.42")).toBe(1);
  });
});
