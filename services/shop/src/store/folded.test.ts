import { expect, test } from "vitest";
import { folded } from "./folded.ts";

test.each([
  ["Özlem", "ozlem"],
  ["OZLEM", "ozlem"],
  ["Ærøskøbing", "ærøskøbing"],
  ["Mark Ⅳ", "mark iv"],
  ["", ""],
])("%s is compared as %s", (text, expected) => {
  expect(folded(text)).toBe(expected);
});
