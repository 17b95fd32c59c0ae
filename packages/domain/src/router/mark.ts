import type { Mark } from "./router.ts";

const LETTER_A = 65;

/**
 * A mark as a number along the dial: 2.5 is itself, "A" is 1, "B" is 2. NaN for anything else.
 * @example
 * markPosition("B") // → 2
 */
export function markPosition(mark: Mark): number {
  if (typeof mark === "number") return mark;
  return /^[A-Za-z]$/.test(mark) ? mark.toUpperCase().charCodeAt(0) - LETTER_A + 1 : Number.NaN;
}

/** A position as a mark of the same kind as the dial's: 2.5, "B", or "B + 1/2" between two letters. */
export function markAt(position: number, like: Mark): Mark {
  if (typeof like === "number") return position;
  const whole = Math.floor(position);
  const letter = String.fromCharCode(LETTER_A + whole - 1);
  const beyond = position - whole;
  return beyond === 0 ? letter : `${letter} + ${beyond.toFixed(2).replace(/0$/, "")}`;
}
