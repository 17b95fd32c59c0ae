/** A rising function and its slope at one point. */
export type Rising = (x: number) => { readonly value: number; readonly slope: number };

/** A root is found when the bracket is this narrow, mm: far below anything a hand can set. */
const WIDTH_MM = 1e-12;
const STEPS_MAX = 100;

/**
 * The x between `low` and `high` at which a rising function reaches `target`, by Newton's method kept inside
 * a shrinking bracket (bisection if the tangent leaves it). The ends are returned for targets beyond them.
 */
export function invertRising(rising: Rising, low: number, high: number, target: number): number {
  let below = low;
  let above = high;
  let x = (low + high) / 2;
  for (let step = 0; step < STEPS_MAX && above - below > WIDTH_MM; step += 1) {
    const { value, slope } = rising(x);
    const miss = value - target;
    if (miss === 0) return x;
    if (miss > 0) above = x;
    else below = x;
    const tangent = x - miss / slope;
    if (Math.abs(tangent - x) < WIDTH_MM) return Math.min(above, Math.max(below, tangent));
    x = tangent > below && tangent < above ? tangent : (below + above) / 2;
  }
  return x;
}
