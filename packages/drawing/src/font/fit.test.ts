import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ELLIPSIS, fitted, type Room, wrapped } from "./fit.ts";
import { textWidthMm } from "./metrics.ts";
import { plain } from "./plain.ts";

const ROOM: Room = { widthMm: 30, sizeMm: 3, weight: "normal" };
const anyText = fc.string({ unit: "binary", maxLength: 200 });
const widthOf = (text: string) => textWidthMm(text, ROOM.sizeMm, ROOM.weight);

describe("on one line", () => {
  it("a text that fits is itself", () => {
    expect(fitted("Cove, 38 mm", ROOM)).toEqual({ text: "Cove, 38 mm" });
  });

  it("one that does not keeps its beginning", () => {
    const name = fitted("a very long name", { widthMm: 16, sizeMm: 3, weight: "normal" });
    expect(name).toEqual({ text: "a very l…", whole: "a very long name" });
  });

  it("any other ends in an ellipsis, fits, and has the whole of it beside", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { text: shown, whole } = fitted(text, ROOM);
        expect(widthOf(shown)).toBeLessThanOrEqual(ROOM.widthMm + 1e-9);
        if (whole === undefined) expect(shown).toBe(plain(text));
        else {
          expect(whole).toBe(plain(text));
          expect(shown.endsWith(ELLIPSIS)).toBe(true);
          expect(whole.startsWith(shown.slice(0, -1))).toBe(true);
        }
      }),
    );
  });

  it("a pair of halves is never cut in two", () => {
    for (const { text } of [fitted("🪵".repeat(50), ROOM), ...wrapped("🪵".repeat(50), ROOM, 2)]) {
      expect(text).toMatch(/^(🪵)+…?$/u);
    }
  });
});

describe("on several lines", () => {
  it("words are kept whole where they can be", () => {
    const lines = wrapped("Set the fence in front of the bit's centre", ROOM).map(({ text }) => text);
    expect(lines.length).toBeGreaterThan(2);
    expect(lines.join(" ")).toBe("Set the fence in front of the bit's centre");
  });

  it("every line fits, and nothing is lost", () => {
    fc.assert(
      fc.property(anyText, fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined }), (text, most) => {
        const lines = wrapped(text, ROOM, most);
        expect(lines.length).toBeLessThanOrEqual(most ?? Number.POSITIVE_INFINITY);
        for (const line of lines) expect(widthOf(line.text)).toBeLessThanOrEqual(ROOM.widthMm + 1e-9);
        const whole = lines.at(-1)?.whole;
        const letters = (some: string) => some.replaceAll(" ", "");
        if (whole === undefined)
          expect(letters(lines.map((line) => line.text).join(""))).toBe(letters(plain(text)));
        else expect(whole).toBe(plain(text));
      }),
    );
  });
});

describe("signs that steer and show nothing", () => {
  it.each([
    ["a\u0000b\u001Fc", "abc"],
    ["\u202Erotuor\u202C", "rotuor"],
    ["one\ud800two\udc00", "onetwo"],
    ["  two\n lines\t", "two lines"],
    ["שלום 12 mm", "שלום 12 mm"],
  ])("%j is %j", (given, want) => {
    expect(plain(given)).toBe(want);
  });
});
