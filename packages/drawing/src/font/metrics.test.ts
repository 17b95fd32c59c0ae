import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { create, type Font } from "fontkit";
import { describe, expect, it } from "vitest";
import { ASCENT_EM, DESCENT_EM, textWidthMm, type Weight } from "./metrics.ts";

/** The font files themselves, read by a library of others. */
const FILES: readonly (readonly [Weight, string])[] = [
  ["normal", "DejaVuSans.ttf"],
  ["bold", "DejaVuSans-Bold.ttf"],
];

const TEXTS = ["88.9 mm", "3-1/2 in", "⌀ 12.7 mm", "Nadel & Søn, žlábek", "Ходовая фреза", "1,234 rpm × 2"];

describe.each(FILES)("widths of %s letters", (weight, file) => {
  const font = fontFrom(file);

  it("are the font's own, for every sign it has", () => {
    const signs = font.characterSet;
    expect(signs.length).toBeGreaterThan(5000);
    for (const code of signs) {
      const want = font.glyphForCodePoint(code).advanceWidth / font.unitsPerEm;
      expect(textWidthMm(String.fromCodePoint(code), 1, weight), code.toString(16)).toBeCloseTo(want, 6);
    }
  });

  it.each(TEXTS)("add up along %s", (text) => {
    const advances = [...text].map((sign) => font.glyphForCodePoint(sign.codePointAt(0) ?? 0).advanceWidth);
    const want = (advances.reduce((sum, each) => sum + each, 0) / font.unitsPerEm) * 3.2;
    expect(textWidthMm(text, 3.2, weight)).toBeCloseTo(want, 6);
  });

  it("no letter reaches above or below what is kept for it", () => {
    expect(font.ascent / font.unitsPerEm).toBeLessThanOrEqual(ASCENT_EM);
    expect(-font.descent / font.unitsPerEm).toBeLessThanOrEqual(DESCENT_EM);
  });
});

it("a sign that the font does not have takes a square", () => {
  expect(textWidthMm("\u{1FAB5}", 3, "normal")).toBe(3);
  expect(textWidthMm("木", 3, "bold")).toBe(3);
});

function fontFrom(file: string): Font {
  const font = create(readFileSync(fileURLToPath(import.meta.resolve(`dejavu-fonts-ttf/ttf/${file}`))));
  if (!("glyphForCodePoint" in font)) throw new Error(`${file} holds several fonts`);
  return font;
}
