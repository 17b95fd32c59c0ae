import { expect, test } from "vitest";
import { formulaTextOf, withoutFormula } from "./formula.ts";

// The characters of OWASP, "CSV Injection" (from memory).
const BEGINNINGS = ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"];
const RESTS = ["", "1+1", "'", "'=1", "\n=1", '"x"', " ", ";=1", ";'=1", '\t"=1"', ";;\t'-1;@"];

/** Where a spreadsheet may begin a cell: at semicolons, tabs and line ends, whatever our quotes say. */
const cellsIn = (cell: string) =>
  cell
    .split(/[;\t\r\n]/)
    .slice(1)
    .map((each) => each.replace(/^"+/, ""));

test("no cell begins as a formula does, and every text comes back", () => {
  const firsts = ["", "'", "''", "x", " ", ...BEGINNINGS];
  const texts = firsts.flatMap((first) =>
    ["", ...BEGINNINGS].flatMap((second) => RESTS.map((rest) => first + second + rest)),
  );
  expect(new Set(texts).size).toBeGreaterThan(1000);
  for (const text of texts) {
    const cell = withoutFormula(text);
    expect(BEGINNINGS.some((beginning) => cell.startsWith(beginning))).toBe(false);
    for (const inner of cellsIn(cell)) expect(inner, JSON.stringify(cell)).not.toMatch(/^[=+\-@＝＋－＠]/);
    expect(formulaTextOf(cell)).toBe(text);
  }
});

test("a text that is no formula is left as it is", () => {
  for (const text of ["", "Panel", "1-1/4 in", "'tis", "a=b", " =1", "flush; -5 deg", "one, -1", "a;b"]) {
    expect(withoutFormula(text)).toBe(text);
    expect(formulaTextOf(text)).toBe(text);
  }
});
