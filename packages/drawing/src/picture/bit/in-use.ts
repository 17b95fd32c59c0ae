import { type BitSetting, type Outline, stretchesAbove } from "@rimwise/domain";
import { partsContour, type SegmentPart } from "../../drafting/outline-path.ts";
import { path } from "../../scene/path.ts";
import type { PathItem } from "../../scene/scene.ts";
import { type BitLayout, ON_ITS_SHANK } from "./layout.ts";

/** The edges that meet wood at a setting, on both sides: what stands out of table or base, in the work, past the fence. */
export function partInUse(
  outline: Outline,
  { heightMm, fenceMm, thicknessMm }: BitSetting,
  { frame }: BitLayout,
): PathItem[] {
  const within = { fromMm: Math.max(0, heightMm - thicknessMm), toMm: heightMm };
  const parts = outline
    .filter(({ role }) => role === "edge")
    .flatMap((segment) =>
      stretchesAbove(segment, within, fenceMm).map((stretch): SegmentPart => ({ segment, ...stretch })),
    );
  const contours = parts.flatMap((part) =>
    ([-1, 1] as const).flatMap((side) => partsContour([part], frame, ON_ITS_SHANK, side) ?? []),
  );
  return contours.length === 0 ? [] : [path({ of: "in-use" }, contours, "heavy")];
}
