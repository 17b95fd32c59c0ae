import { describe, expect, it } from "vitest";
import { wordsIn } from "./words.ts";

describe("words", () => {
  it.each([
    ["The Router bits, a Round-over and 2 COVES!", ["round", "over", "2", "cove"]],
    ["cove Cove coves", ["cove"]],
    ["Façade Œuvre Straße Ærø łódź", ["facade", "oeuvre", "strasse", "aero", "lodz"]],
    ["фреза", ["фреза"]],
    ["compress gas", ["compress", "gas"]],
    ["", []],
  ])("%s", (text, want) => {
    expect(wordsIn(text)).toEqual(want);
  });
});
