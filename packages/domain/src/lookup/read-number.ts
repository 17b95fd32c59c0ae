/** A number found among the tokens of a query. */
export type NumberRead = {
  readonly value: number;
  /** Written with a fraction, as people only do in inches. */
  readonly isFraction: boolean;
  /** A lone word such as "half" or "two": a number only if a unit or a dimension follows. */
  readonly isLoneWord: boolean;
  /** Place of the token after it. */
  readonly next: number;
};

type Fraction = { readonly value: number; readonly isLoneWord: boolean; readonly next: number };

const WHOLES: ReadonlyMap<string, number> = new Map([
  ["one", 1],
  ["two", 2],
  ["three", 3],
  ["four", 4],
  ["five", 5],
  ["six", 6],
  ["seven", 7],
  ["eight", 8],
  ["nine", 9],
  ["ten", 10],
  ["eleven", 11],
  ["twelve", 12],
]);

const PARTS: ReadonlyMap<string, number> = new Map([
  ["half", 2],
  ["halves", 2],
  ["quarter", 4],
  ["quarters", 4],
  ["eighth", 8],
  ["eighths", 8],
  ["sixteenth", 16],
  ["sixteenths", 16],
]);

const DIGITS = /^\d+$/;
const DECIMAL = /^\d*\.\d+$/;

/**
 * The numbers that may start at this place, the longest first: "3 1/2" is three and a half, or else 3. "half", "a quarter",
 * "three quarters" and "one and a half" are read too.
 */
export function numbersAt(tokens: readonly string[], at: number): NumberRead[] {
  const fraction = fractionAt(tokens, at);
  if (fraction !== undefined) return [{ ...fraction, isFraction: true }];
  const token = tokens[at] ?? "";
  if (DECIMAL.test(token)) {
    return [{ value: Number(token), isFraction: false, isLoneWord: false, next: at + 1 }];
  }
  const value = DIGITS.test(token) ? Number(token) : WHOLES.get(token);
  // What stands before a stroke and is no fraction ("5/0") is no number of its own either.
  if (value === undefined || tokens[at + 1] === "/") return [];
  const whole = { value, isFraction: false, isLoneWord: !DIGITS.test(token), next: at + 1 };
  const rest = fractionAt(tokens, at + 1) ?? fractionAfterAnd(tokens, at + 1);
  if (rest === undefined || rest.value >= 1) return [whole];
  const mixed = { value: value + rest.value, isFraction: true, isLoneWord: false, next: rest.next };
  return [mixed, whole];
}

/** "and a half": what may follow a whole number, or the unit of one. */
export function fractionAfterAnd(tokens: readonly string[], at: number): Fraction | undefined {
  const fraction = tokens[at] === "and" ? fractionAt(tokens, at + 1) : undefined;
  return fraction !== undefined && fraction.value < 1 ? fraction : undefined;
}

/** "3/4", "three quarters", "a quarter", "half". */
function fractionAt(tokens: readonly string[], at: number): Fraction | undefined {
  const [first = "", second = "", third = ""] = tokens.slice(at, at + 3);
  if (DIGITS.test(first) && second === "/" && DIGITS.test(third) && Number(third) > 0) {
    return { value: Number(first) / Number(third), isLoneWord: false, next: at + 3 };
  }
  const alone = PARTS.get(first);
  if (alone !== undefined) return { value: 1 / alone, isLoneWord: true, next: at + 1 };
  const part = PARTS.get(second);
  if (part === undefined) return undefined;
  if (first === "a" || first === "an") return { value: 1 / part, isLoneWord: true, next: at + 2 };
  const count = WHOLES.get(first);
  return count === undefined ? undefined : { value: count / part, isLoneWord: count === 1, next: at + 2 };
}
