import { expect, test } from "vitest";
import { withDecimalPoint } from "./decimal-comma.ts";

// How numbers are written with a decimal comma, and how with one between thousands: common practice.
test.each([
  ["8,5 mm", "8.5 mm"],
  ["88,90 mm", "88.90 mm"],
  ["0,500 in", "0.500 in"],
  [",5 in", "0.5 in"],
  ["12,7000", "12.7000"],
  ["1.234,5 mm", "1234.5 mm"],
  ["1,234.5 mm", "1,234.5 mm"],
  ["1,234,567 mm", "1,234,567 mm"],
  ["88.9 mm", "88.9 mm"],
])("%j is clearly %j", (text, plain) => {
  expect(withDecimalPoint(text, false)).toEqual({ kind: "clear", text: plain });
});

test("a comma before three digits may be either in a length, and groups thousands of turns", () => {
  expect(withDecimalPoint("1,234 mm", false)).toEqual({ kind: "either", one: "1234", other: "1.234" });
  expect(withDecimalPoint("22,000 rpm", true)).toEqual({ kind: "clear", text: "22,000 rpm" });
});

test("a point before three digits may be either in a number of turns, and is a decimal of a length", () => {
  expect(withDecimalPoint("22.000 rpm", true)).toEqual({ kind: "either", one: "22000", other: "22" });
  expect(withDecimalPoint("1.234 mm", false)).toEqual({ kind: "clear", text: "1.234 mm" });
});
