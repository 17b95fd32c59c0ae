import { ASCENT_EM, DESCENT_EM, textWidthMm } from "../font/metrics.ts";
import type { Item, Scene, TextItem } from "./scene.ts";

/** The room a text takes on paper, mm. */
export type TextBox = {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly topMm: number;
  readonly bottomMm: number;
  readonly text: string;
};

/** The room one text takes, by the font's own measures. */
export function textBox({ xMm, yMm, sizeMm, anchor, weight, text }: TextItem): TextBox {
  const widthMm = textWidthMm(text, sizeMm, weight);
  const before = anchor === "start" ? 0 : anchor === "middle" ? widthMm / 2 : widthMm;
  const leftMm = xMm - before;
  return {
    leftMm,
    rightMm: leftMm + widthMm,
    topMm: yMm - ASCENT_EM * sizeMm,
    bottomMm: yMm + DESCENT_EM * sizeMm,
    text,
  };
}

/** Every text of a scene, those of its measures among them. */
export function textsOf({ items }: Pick<Scene, "items">): TextItem[] {
  return items.flatMap((item) => textsIn(item));
}

function textsIn(item: Item): TextItem[] {
  switch (item.kind) {
    case "text":
      return [item];
    case "measure":
      return [item.label];
    case "group":
      return textsOf(item);
    case "path":
      return [];
  }
}
