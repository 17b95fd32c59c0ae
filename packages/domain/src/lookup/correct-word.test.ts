import { describe, expect, it } from "vitest";
import { correctWord } from "./correct-word.ts";
import { editDistance } from "./edit-distance.ts";

describe("the slips between two words", () => {
  // The first two are the usual examples of Levenshtein's distance; a swap of neighbours is one slip by Damerau 1964.
  it.each([
    ["kitten", "sitting", 3],
    ["saturday", "sunday", 3],
    ["ca", "ac", 1],
    ["sprial", "spiral", 1],
    ["rond", "round", 1],
    ["", "abc", 3],
    ["same", "same", 0],
  ])("%s and %s: %i", (one, other, slips) => {
    expect(editDistance(one, other)).toBe(slips);
    expect(editDistance(other, one)).toBe(slips);
  });
});

describe("a mistyped word of the trade", () => {
  it.each([
    ["rond", ["round"]],
    ["sprial", ["spiral"]],
    ["stright", ["straight"]],
    ["dovtail", ["dovetail"]],
    ["chamfre", ["chamfer"]],
  ])("%s is probably one of %j", (word, anyOf) => {
    const correction = correctWord(word);
    expect(correction?.kind === "near" && correction.anyOf).toEqual(anyOf);
  });

  it("that is two written together is both", () => {
    expect(correctWord("spiralpilot")).toEqual({ kind: "joined", words: ["spiral", "pilot"] });
  });

  it.each(["round", "roundover", "spi", "cove", "walrus", "xyz", "ab"])("%s is left as it is", (word) => {
    expect(correctWord(word)).toBeUndefined();
  });
});
