import type { Bit } from "../bit/bit.ts";
import { formOutline } from "../bit/form/registry.ts";
import { removedWidths, type Strip } from "../bit/removed-width.ts";
import type { BitSetting } from "../bit/section.ts";

/** One half of a joint: the bit that cuts it, as it measures now, at its final setting. */
export type JointHalf = {
  readonly bit: Bit;
  readonly setting: BitSetting;
  /** Thickness of a board that stands on its end while it is cut, across the bit. Default: the setting's thickness. */
  readonly acrossMm?: number;
};

/** Chords stay this near to the arcs they stand for, mm: a tenth of what a joint is judged by. */
const CHORD_MM = 0.001;

/** The width that is gone at each height of a half. */
export function wallOf({ bit, setting }: JointHalf): Strip[] {
  return removedWidths(formOutline(bit.form), setting, CHORD_MM);
}

/** How thick the board is across the bit. */
export function acrossMm({ acrossMm: givenMm, setting }: JointHalf): number {
  return givenMm ?? setting.thicknessMm;
}

/** A wall upside down in work of this thickness. */
export function turnedOver(wall: readonly Strip[], thicknessMm: number): Strip[] {
  return wall
    .map(({ fromMm, toMm, startWidthMm, endWidthMm }) => ({
      fromMm: thicknessMm - toMm,
      toMm: thicknessMm - fromMm,
      startWidthMm: endWidthMm,
      endWidthMm: startWidthMm,
    }))
    .reverse();
}

/** A wall so much higher. */
export function raised(wall: readonly Strip[], byMm: number): Strip[] {
  return wall.map((strip) => ({ ...strip, fromMm: strip.fromMm + byMm, toMm: strip.toMm + byMm }));
}

/** A wall that goes on above with so much gone, for a half that ends there. */
export function endedBy(wall: readonly Strip[], toMm: number, widthMm: number): Strip[] {
  const fromMm = wall.at(-1)?.toMm ?? 0;
  return toMm <= fromMm ? [...wall] : [...wall, { fromMm, toMm, startWidthMm: widthMm, endWidthMm: widthMm }];
}

/** The width gone at one height, in the strip that holds it; undefined beyond the wall. Between two strips either may answer. */
export function widthAtMm(wall: readonly Strip[], zMm: number): number | undefined {
  let low = 0;
  let high = wall.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((wall[middle]?.toMm ?? 0) < zMm) low = middle + 1;
    else high = middle;
  }
  const strip = wall[low];
  if (strip === undefined || zMm < strip.fromMm || zMm > strip.toMm) return undefined;
  return widthOnStripMm(strip, zMm);
}

/** The width gone at one height of a strip. */
export function widthOnStripMm(strip: Strip, zMm: number): number {
  const along = (zMm - strip.fromMm) / (strip.toMm - strip.fromMm);
  return strip.startWidthMm + (strip.endWidthMm - strip.startWidthMm) * along;
}
