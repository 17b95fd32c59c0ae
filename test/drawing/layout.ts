import { type Scene, svg, type TextBox, textBox, textsOf } from "@rimwise/drawing";
import { expect } from "vitest";
import { readBack } from "./read-back.ts";

/** Boxes that share less than this touch, and do not overlap, mm. */
const TOUCH_MM = 0.05;

/** Nothing may act, fetch or hold other markup: only these elements and attributes are ever written. */
const ELEMENTS = new Set(["svg", "title", "desc", "g", "path", "rect", "text"]);
const ACTIVE = /^(on|href|xlink|style|src)/i;

/** Every pair of texts that overlap, and every text that leaves the page. */
export function crowded(scene: Scene): string[] {
  const boxes = textsOf(scene)
    .filter(({ text }) => text !== "")
    .map(textBox);
  const out = boxes.filter(
    ({ leftMm, rightMm, topMm, bottomMm }) =>
      leftMm < -TOUCH_MM ||
      topMm < -TOUCH_MM ||
      rightMm > scene.widthMm + TOUCH_MM ||
      bottomMm > scene.heightMm + TOUCH_MM,
  );
  const over = boxes.flatMap((one, index) =>
    boxes
      .slice(index + 1)
      .filter((other) => doOverlap(one, other))
      .map((other) => `"${one.text}" and "${other.text}"`),
  );
  return [...out.map(({ text }) => `"${text}" leaves the page`), ...over];
}

/** Holds a scene to what every picture keeps: room for its texts, letters that are read on a phone, and an SVG in which nothing acts. */
export function expectKept(scene: Scene): void {
  expect(crowded(scene)).toEqual([]);
  for (const { sizeMm, text } of textsOf(scene)) expect(sizeMm, text).toBeGreaterThanOrEqual(2.4);
  const { elements } = readBack(svg(scene));
  for (const { name, attributes } of elements) {
    expect(ELEMENTS.has(name), name).toBe(true);
    for (const [attribute, value] of Object.entries(attributes)) {
      expect(ACTIVE.test(attribute), attribute).toBe(false);
      if (!["aria-label", "data-measure"].includes(attribute))
        expect(value).not.toMatch(/url\(|javascript:/i);
    }
  }
}

function doOverlap(one: TextBox, other: TextBox): boolean {
  return (
    Math.min(one.rightMm, other.rightMm) - Math.max(one.leftMm, other.leftMm) > TOUCH_MM &&
    Math.min(one.bottomMm, other.bottomMm) - Math.max(one.topMm, other.topMm) > TOUCH_MM
  );
}
