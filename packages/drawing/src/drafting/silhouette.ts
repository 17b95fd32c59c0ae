import { type Bit, bitSolid, formOutline, outlineLengthMm } from "@rimwise/domain";
import type { Frame } from "../scene/frame.ts";
import { path, worldRectangle } from "../scene/path.ts";
import type { LineStyle, PathItem } from "../scene/scene.ts";
import { outlineContour } from "./outline-path.ts";

/** Shank drawn below the head, mm in the world: as much as a hole of a rack hides is not. */
export const SHANK_SHOWN_MM = 14;

/** How wide and how high a bit is drawn, mm in the world. */
export function silhouetteSize(bit: Bit): { readonly widthMm: number; readonly heightMm: number } {
  return {
    widthMm: 2 * Math.max(bitSolid(bit).rimRadiusMm, bit.shankDiameterMm / 2),
    heightMm: outlineLengthMm(formOutline(bit.form)) + SHANK_SHOWN_MM,
  };
}

/** A bit standing on its shank, without dimensions: its tip at the origin of the frame. */
export function silhouette(bit: Bit, frame: Frame, line: LineStyle): PathItem[] {
  const outline = formOutline(bit.form);
  const headMm = outlineLengthMm(outline);
  const radiusMm = bit.shankDiameterMm / 2;
  return [
    path(
      { of: "shank" },
      worldRectangle(frame, [-radiusMm, headMm], [radiusMm, headMm + SHANK_SHOWN_MM]),
      line,
      "paper",
    ),
    path(
      { of: "outline" },
      outlineContour(outline, frame, { axisMm: 0, tipMm: 0, shankToward: 1 }),
      line,
      "pale",
    ),
  ];
}
