import type { Profile } from "@rimwise/domain";
import { cleared } from "../../drafting/cleared.ts";
import { hatched, hatchOf } from "../../drafting/hatch.ts";
import { SMALL_MM } from "../../drafting/page.ts";
import { profileContours } from "../../drafting/profile-contours.ts";
import { roomIn } from "../../drafting/room-in.ts";
import { textLine } from "../../drafting/text.ts";
import { textWidthMm } from "../../font/metrics.ts";
import type { Contour } from "../../scene/contour.ts";
import type { Frame } from "../../scene/frame.ts";
import { path } from "../../scene/path.ts";
import type { Item, TextItem } from "../../scene/scene.ts";

/** White around a number that stands in its hatching, mm. */
const CLEAR_MM = 0.3;
/** Digits reach so far above the line, in heights of the letter. From the font's capital height, 0.73. */
const DIGIT_EM = 0.73;

/** The work as it is left, and what each pass takes as a layer: what was there before it and is not after. */
export function layers(profiles: readonly Profile[], frame: Frame): Item[] {
  const contours = profiles.map((profile) => profileContours(profile, frame));
  const [before, ...after] = contours;
  const left = after.at(-1);
  if (before === undefined || left === undefined) return [];
  const items: Item[] = [path({ of: "work" }, left, "none", "pale")];
  const numbers: Item[] = [];
  after.forEach((now, index) => {
    const layer = [...(contours[index] ?? before), ...now];
    const number = index + 1;
    items.push(path({ of: "pass", number }, layer, "none", "none"));
    items.push(hatched({ of: "pass", number }, layer, hatchOf(number)));
    numbers.push(...numbered(layer, number));
  });
  // Thin lines where each pass ends; heavy ones around what is left.
  after.slice(0, -1).forEach((now, index) => {
    items.push(path({ of: "pass-end", number: index + 1 }, now, "thin"));
  });
  items.push(path({ of: "stock" }, before, "dashed"), path({ of: "left" }, left, "heavy"));
  return [...items, ...numbers];
}

/** The number of a layer in it, if it is thick enough to hold it. */
function numbered(layer: readonly Contour[], number: number): Item[] {
  const text = String(number);
  const widthMm = textWidthMm(text, SMALL_MM, "bold") + 2 * CLEAR_MM;
  const heightMm = DIGIT_EM * SMALL_MM + 2 * CLEAR_MM;
  const middle = roomIn(layer, widthMm, heightMm);
  if (middle === undefined) return [];
  const label: TextItem = textLine(text, middle.yMm + (DIGIT_EM * SMALL_MM) / 2, {
    xMm: middle.xMm,
    anchor: "middle",
    sizeMm: SMALL_MM,
    weight: "bold",
  });
  return cleared(label);
}
