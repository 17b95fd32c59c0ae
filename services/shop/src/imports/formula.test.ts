import { expect, test } from "vitest";
import { formulaTextOf, withoutFormula } from "./formula.ts";

// The characters of OWASP, "CSV Injection" (from memory).
const BEGINNINGS = ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"];
const RESTS = ["", "1+1", "'", "'=1", "\n=1", '"x"', " "];

test("no cell begins as a formula does, and every text comes back", () => {
  const firsts = ["", "'", "''", "x", " ", ...BEGINNINGS];
  const texts = firsts.flatMap((first) =>
    ["", ...BEGINNINGS].flatMap((second) => RESTS.map((rest) => first + second + rest)),
  );
  expect(new Set(texts).size).toBeGreaterThan(1000);
  for (const text of texts) {
    const cell = withoutFormula(text);
    expect(BEGINNINGS.some((beginning) => cell.startsWith(beginning))).toBe(false);
    expect(formulaTextOf(cell)).toBe(text);
  }
});

test("a text that is no formula is left as it is", () => {
  for (const text of ["", "Panel", "1-1/4 in", "'tis", "a=b", " =1"]) {
    expect(withoutFormula(text)).toBe(text);
    expect(formulaTextOf(text)).toBe(text);
  }
});
