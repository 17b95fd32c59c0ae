import type { Outline } from "../bit/outline.ts";
import type { CutSetup } from "../cut/setup.ts";

/** Untouched edge that a bearing needs to run on, mm. Ours; a bearing is 4 to 5 mm wide (common practice). */
export const LEAST_WOOD_FOR_BEARING_MM = 2;

/**
 * How much of the work's edge a pilot bearing runs on at the final setting, mm: the part of its height that lies beside the work.
 * Undefined for a bit without a pilot, or one whose fence stands in front of the bearing so that it touches nothing. 0 mm and up.
 * @example
 * const outline = formOutline({ kind: "round-over", diameterMm: 25.4, radiusMm: 6.35, pilotHeightMm: 5 });
 * woodForBearingMm(outline, { heightMm: 11.35, fenceMm: 6.35, thicknessMm: 19 }) // → 5
 */
export function woodForBearingMm(
  outline: Outline,
  { heightMm, fenceMm, thicknessMm }: Pick<CutSetup, "heightMm" | "fenceMm" | "thicknessMm">,
): number | undefined {
  const pilot = outline.find(({ role }) => role === "pilot");
  if (pilot?.kind !== "line" || fenceMm > pilot.startRadiusMm) return undefined;
  const fromMm = Math.max(0, heightMm - pilot.toMm);
  const toMm = Math.min(thicknessMm, heightMm - pilot.fromMm);
  return Math.max(0, toMm - fromMm);
}
