import { type Scene, svg, type TextBox, textBox, textsOf } from "@rimwise/drawing";
import { expect } from "vitest";
import { readBack } from "./read-back.ts";

/** Boxes that share less than this touch, and do not overlap, mm. */
const TOUCH_MM = 0.05;

/** Nothing may act, fetch or hold other markup: only these elements and attributes are ever written. */
const ELEMENTS = new Set(["svg", "title", "desc", "g", "path", "rect", "text"]);
const ACTIVE = /^(on|href|xlink|style|src)/i;
const FETCHED = /url\(|javascript:/i;
/** Attributes that hold what people wrote, which acts on nothing there. */
const SAID = new Set(["aria-label", "data-measure"]);
/** Smaller letters are not read on a phone. */
const LEAST_TEXT_MM = 2.4;

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
  // From the top down: what begins below the end of a text overlaps none after it.
  const fromTop = [...boxes].sort((one, other) => one.topMm - other.topMm);
  const over = fromTop.flatMap((one, index) => {
    const end = nextBelow(fromTop, index, one.bottomMm);
    return fromTop
      .slice(index + 1, end)
      .filter((other) => doOverlap(one, other))
      .map((other) => `"${one.text}" and "${other.text}"`);
  });
  return [...out.map(({ text }) => `"${text}" leaves the page`), ...over];
}

/** Holds a scene to what every picture keeps: room for its texts, letters that are read on a phone, and an SVG in which nothing acts. */
export function expectKept(scene: Scene): void {
  expect(crowded(scene)).toEqual([]);
  const small = textsOf(scene).filter(({ sizeMm }) => sizeMm < LEAST_TEXT_MM);
  expect(small.map(({ text }) => text)).toEqual([]);
  const { elements } = readBack(svg(scene));
  const wrong = elements.flatMap(({ name, attributes }) => [
    ...(ELEMENTS.has(name) ? [] : [name]),
    ...Object.entries(attributes)
      .filter(([attribute, value]) => ACTIVE.test(attribute) || (!SAID.has(attribute) && FETCHED.test(value)))
      .map(([attribute]) => `${name} ${attribute}`),
  ]);
  expect(wrong).toEqual([]);
}

/** The first after a place that begins below a height; all that follow do too. */
function nextBelow(fromTop: readonly TextBox[], index: number, bottomMm: number): number {
  for (let place = index + 1; place < fromTop.length; place += 1)
    if ((fromTop[place]?.topMm ?? 0) > bottomMm) return place;
  return fromTop.length;
}

function doOverlap(one: TextBox, other: TextBox): boolean {
  return (
    Math.min(one.rightMm, other.rightMm) - Math.max(one.leftMm, other.leftMm) > TOUCH_MM &&
    Math.min(one.bottomMm, other.bottomMm) - Math.max(one.topMm, other.topMm) > TOUCH_MM
  );
}
