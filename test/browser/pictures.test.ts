import { PICTURES, svg } from "@rimwise/drawing";
import type { Browser } from "playwright-core";
import { PNG } from "pngjs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { EXAMPLES } from "../drawing/examples.ts";
import { hasBrowser, launchBrowser } from "./browser.ts";

/** A phone; in continuous integration a card beside the machine and a screen on the wall too: widths in pixels. */
const WIDTHS = process.env["CI"] === undefined ? [360] : [360, 720, 1440];
const KINDS = Object.values(PICTURES).map(({ kind }) => kind);

/** A text is this much off its measured width at most: hinting at small sizes. */
const OFF_PX = 2;

describe.skipIf(!hasBrowser)("a picture in a browser", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser.close());

  test.each(KINDS)("%s is whole at each size, its texts where they were measured", async (kind) => {
    const scene = EXAMPLES[kind]("Panel raiser, rack 2", "metric");
    const context = await browser.newContext();
    const page = await context.newPage();
    for (const width of WIDTHS) {
      const height = Math.ceil((width * scene.heightMm) / scene.widthMm);
      await page.setViewportSize({ width, height });
      await page.setContent(
        `<style>body{margin:0}svg{width:100%;height:auto;display:block}</style>${svg(scene)}`,
      );
      const { texts, right, bottom } = await page.evaluate(() => {
        const box = document.querySelector("svg")?.getBoundingClientRect();
        return {
          right: box?.right ?? 0,
          bottom: box?.bottom ?? 0,
          texts: [...document.querySelectorAll("text")].map((text) => {
            const { left, right, top, bottom } = text.getBoundingClientRect();
            return { text: text.textContent, left, right, top, bottom };
          }),
        };
      });
      expect(right).toBeCloseTo(width, 0);
      const out = texts.filter(
        (text) =>
          text.left < -OFF_PX ||
          text.right > right + OFF_PX ||
          text.top < -OFF_PX ||
          text.bottom > bottom + OFF_PX,
      );
      expect(out, `${width} px`).toEqual([]);
      const png = PNG.sync.read(await page.screenshot());
      const dark = png.data.filter((value, index) => index % 4 === 0 && value < 128).length;
      expect(dark / (png.width * png.height)).toBeGreaterThan(0.005);
    }
    await context.close();
  });

  test("every kind prints on one page of A4 at its true size", async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    for (const kind of KINDS) {
      const scene = EXAMPLES[kind]("Panel raiser, rack 2", "imperial");
      if (scene.heightMm > 277) continue;
      await page.setContent(
        `<style>@page{size:A4;margin:10mm}body{margin:0}svg{display:block}</style>${svg(scene)}`,
      );
      const pdf = await page.pdf({ preferCSSPageSize: true });
      expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g), kind).toHaveLength(1);
      const widthPx = await page.evaluate(() => document.querySelector("svg")?.getBoundingClientRect().width);
      // CSS: 96 pixels to the inch.
      expect(widthPx, kind).toBeCloseTo((scene.widthMm / 25.4) * 96, 1);
    }
    await context.close();
  });
});
