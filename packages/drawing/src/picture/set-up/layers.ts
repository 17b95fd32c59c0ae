import type { Profile } from "@rimwise/domain";
import { hatched, hatchOf } from "../../drafting/hatch.ts";
import { profileContours } from "../../drafting/profile-contours.ts";
import type { Frame } from "../../scene/frame.ts";
import { path } from "../../scene/path.ts";
import type { Item } from "../../scene/scene.ts";
import { type Beside, type Layer, passNumbers } from "./pass-numbers.ts";

/** The work as it is left, and what each pass takes as a layer: what was there before it and is not after. */
export function layers(profiles: readonly Profile[], frame: Frame, beside: Beside): Item[] {
  const contours = profiles.map((profile) => profileContours(profile, frame));
  const [before, ...after] = contours;
  const left = after.at(-1);
  if (before === undefined || left === undefined) return [];
  const items: Item[] = [path({ of: "work" }, left, "none", "pale")];
  const drawn: Layer[] = [];
  after.forEach((now, index) => {
    const number = index + 1;
    const layer = [...(contours[index] ?? before), ...now];
    const hatching = hatched({ of: "pass", number }, layer, hatchOf(number));
    items.push(path({ of: "pass", number }, layer, "none", "none"), hatching);
    drawn.push({ number, contours: layer, strokes: hatching.contours });
  });
  // Thin lines where each pass ends; heavy ones around what is left.
  after.slice(0, -1).forEach((now, index) => {
    items.push(path({ of: "pass-end", number: index + 1 }, now, "thin"));
  });
  items.push(path({ of: "stock" }, before, "dashed"), path({ of: "left" }, left, "heavy"));
  return [...items, ...passNumbers(drawn, beside)];
}
