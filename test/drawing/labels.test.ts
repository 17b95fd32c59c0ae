import { labelPage, labelScene, STOCKS, type StockName, textsOf } from "@rimwise/drawing";
import { describe, expect, it } from "vitest";
import { qrIn } from "./code-in.ts";
import { HOSTILE } from "./hostile.ts";
import { crowded } from "./layout.ts";
import { CODE, CODE_OPENS } from "./sheet-examples.ts";

const STOCK_NAMES = Object.keys(STOCKS) as StockName[];

describe("labels", () => {
  const label = (name: string) => ({
    code: CODE,
    number: "14",
    title: name,
    lines: [name, "Ø 88.9 mm", name],
  });

  it.each(STOCK_NAMES)("lie apart and on the page on %s", (stock) => {
    for (const name of ["Raised panel, 89 mm", ...Object.values(HOSTILE)]) {
      const { columns, rows, labelWidthMm, labelHeightMm } = STOCKS[stock];
      const page = labelPage(
        stock,
        Array.from({ length: columns * rows }, () => label(name)),
        "Labels",
      );
      expect(crowded(page)).toEqual([]);
      expect(labelWidthMm * columns).toBeLessThanOrEqual(page.widthMm);
      expect(labelHeightMm * rows).toBeLessThanOrEqual(page.heightMm);
    }
  });

  it.each(process.env["CI"] === undefined ? STOCK_NAMES.slice(0, 2) : STOCK_NAMES)(
    "of %s are read by a scanner as they are printed, at 300 dots to the inch",
    async (stock) => {
      const page = labelPage(stock, [label("Raised panel")], "Labels");
      expect(await qrIn(page)).toBe(CODE_OPENS);
    },
  );

  it("of our own size say a diameter whole, however long the name is", () => {
    const scene = labelScene(
      label("Raised panel with a cove face and a name that goes on for longer than any label"),
    );
    expect([scene.widthMm, scene.heightMm]).toEqual([62, 29]);
    expect(textsOf(scene).map(({ text }) => text)).toContain("Ø 88.9 mm");
    expect(crowded(scene)).toEqual([]);
  });
});
