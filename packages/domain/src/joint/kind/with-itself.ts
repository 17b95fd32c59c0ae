import type { Bit } from "../../bit/bit.ts";
import type { BitSetting } from "../../bit/section.ts";
import { type Halves, mustBeThick, type Settings } from "./define.ts";

/** Where along the bit the halves of a joint with itself turn about each other, and how far from there it cuts either way. */
export type Turn = { readonly alongMm: number; readonly cutsMm: number };

/** Both halves at one height, with the place that they turn about at the middle of the stock. */
export function settingsAbout({ alongMm, cutsMm }: Turn, thicknessMm: number, fenceMm: number): Settings {
  mustBeThick(thicknessMm, { max: 2 * cutsMm });
  const setting: BitSetting = { heightMm: alongMm + thicknessMm / 2, fenceMm, thicknessMm };
  return [setting, setting];
}

/** The heights above the table of that place in each half. */
export function turnsAtMm([one, other]: Halves, alongMm: (bit: Bit) => number): readonly [number, number] {
  return [one.setting.heightMm - alongMm(one.bit), other.setting.heightMm - alongMm(other.bit)];
}
