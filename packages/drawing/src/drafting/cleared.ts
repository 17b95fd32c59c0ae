import { path, rectangle } from "../scene/path.ts";
import type { Item, TextItem } from "../scene/scene.ts";
import { textBox } from "../scene/text-box.ts";

/** White around a text that stands on lines, mm; and how far capitals and digits reach above the baseline, in heights of the letter: the font's capital height. */
const CLEAR_MM = 0.3;
const CAPITAL_EM = 0.73;

/** A text on paper of its own, so that no line runs through it. */
export function cleared(text: TextItem): Item[] {
  const { leftMm, rightMm } = textBox(text);
  const box = rectangle(
    { xMm: leftMm - CLEAR_MM, yMm: text.yMm - CAPITAL_EM * text.sizeMm - CLEAR_MM },
    { xMm: rightMm + CLEAR_MM, yMm: text.yMm + CLEAR_MM },
  );
  return [path({ of: "cleared" }, box, "none", "paper"), text];
}
