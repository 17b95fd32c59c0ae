import { floorTo, type Mark } from "@rimwise/domain";

/** Decimals that mean something on each kind of quantity; what a shop can set or measure, and one more. */
export const DECIMALS = {
  rpm: 0,
  mPerS: 2,
  mph: 1,
  mm: 2,
  toothMm: 3,
  chipMm: 4,
  waveMm: 5,
  mm2: 2,
  mPerMin: 2,
  s: 1,
  n: 1,
  nm: 3,
  j: 1,
  mmPerS: 1,
  mPa: 1,
  ratio: 2,
  w: 0,
  percent: 1,
  mark: 2,
};

/** A speed on the wire: always cut down. */
export function rpm(value: number): number {
  return floorTo(value, DECIMALS.rpm);
}

/** A mark on the wire. */
export function dialMark(mark: Mark): Mark {
  return typeof mark === "number" ? floorTo(mark, DECIMALS.mark) : mark;
}
