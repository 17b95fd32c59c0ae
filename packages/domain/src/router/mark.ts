import type { Mark } from "./router.ts";

const LETTER_A = 65;

/** What sums of steps lose in binary, in hundredths of a mark. */
const ROUNDING = 1e-6;

/** Places between two letters are told apart to this many hundredths, as they are between two numbers. */
const PLACES_PER_LETTER = 100;

/** A letter alone, or with how far toward the next one it is: "B.5". */
const LETTERED = /^([A-Za-z])(\.\d{1,2})?$/;

/**
 * A mark as a number along the dial: 2.5 is itself, "A" is 1, "B" is 2, "B.5" is 2.5. NaN for anything else.
 * @example
 * markPosition("B") // → 2
 */
export function markPosition(mark: Mark): number {
  if (typeof mark === "number") return mark;
  const [, letter, beyond = ""] = LETTERED.exec(mark) ?? [];
  if (letter === undefined) return Number.NaN;
  return letter.toUpperCase().charCodeAt(0) - LETTER_A + 1 + Number(`0${beyond}`);
}

/**
 * A position as a mark of the same kind as the dial's: 2.5, "B", or "B.5" halfway from B to C. A place between two letters is
 * written to a hundredth and never rounded toward the faster one.
 * @example
 * markAt(2.5, "A") // → "B.5"
 */
export function markAt(position: number, like: Mark): Mark {
  if (typeof like === "number") return position;
  const hundredths = Math.floor(position * PLACES_PER_LETTER + ROUNDING);
  const letter = String.fromCharCode(LETTER_A + Math.floor(hundredths / PLACES_PER_LETTER) - 1);
  const beyond = hundredths % PLACES_PER_LETTER;
  return beyond === 0 ? letter : `${letter}${String(beyond / PLACES_PER_LETTER).slice(1)}`;
}
