import { describe, expect, it } from "vitest";
import { canonicalText } from "./canonical.ts";

describe("a value as canonical JSON", () => {
  // RFC 8785, sections 3.2.2 to 3.2.4.
  it("is written as in the standard's example", () => {
    const sample = String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`;
    const numbers = "[333333333.3333333,1e+30,4.5,0.002,1e-27]";
    const string = String.raw`"€$\u000f\nA'B\"\\\\\"/"`;
    expect(canonicalText(JSON.parse(sample))).toBe(
      `{"literals":[null,true,false],"numbers":${numbers},"string":${string}}`,
    );
  });

  // RFC 8785, section 3.2.3.
  it("has its members in the order of their UTF-16 code units", () => {
    const sample = {
      "\u20ac": "Euro Sign",
      "\r": "Carriage Return",
      "\ufb33": "Hebrew Letter Dalet With Dagesh",
      "1": "One",
      "\ud83d\ude00": "Emoji, Grinning Face",
      "\u0080": "Control",
      "\u00f6": "Latin Small Letter O With Diaeresis",
    };
    const values: unknown = JSON.parse(
      `[${[...canonicalText(sample).matchAll(/:("[^"]*")/g)].map(([, value]) => value).join(",")}]`,
    );
    expect(values).toEqual([
      "Carriage Return",
      "One",
      "Control",
      "Latin Small Letter O With Diaeresis",
      "Euro Sign",
      "Emoji, Grinning Face",
      "Hebrew Letter Dalet With Dagesh",
    ]);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1n, () => 1, new Date(0)])(
    "does not exist of what JSON cannot say",
    (value) => {
      expect(() => canonicalText({ of: [value] })).toThrow(TypeError);
    },
  );

  it("takes what has no value as JSON does", () => {
    expect(canonicalText({ b: [undefined], a: undefined })).toBe('{"b":[null]}');
  });
});
