import type { Fault, FaultCode } from "../../quantity/fault.ts";

/** A fault in words: what is wrong, and what would be accepted. */
export type FaultWords = { readonly message: string; readonly accepted: string };

type Values = Fault["values"];

const WORDS: Readonly<Record<FaultCode, (values: Values) => FaultWords>> = {
  "not-a-quantity": ({ accepted }) => ({
    message: "This does not read as a quantity with a unit.",
    accepted: String(accepted ?? 'A number and a unit, such as "3-1/2 in" or "88.9 mm".'),
  }),
  "not-finite": (values) => ({ message: "This must be a finite number.", accepted: between(values) }),
  "out-of-range": (values) => ({
    message: "This is outside what can be worked with.",
    accepted: between(values),
  }),
  "unknown-choice": ({ accepted }) => ({
    message: "This is not one of the names known here.",
    accepted: String(accepted),
  }),
  "pilot-too-large": ({ diameterMm }) => ({
    message: "The pilot must be smaller than the bit: with this one nothing would be cut.",
    accepted: `less than ${diameterMm}`,
  }),
  "profile-too-large": ({ max }) => ({
    message: "The profile does not fit between the pilot and the rim of the bit.",
    accepted: `at most ${trim(max)}`,
  }),
  "outline-turns-back": () => ({
    message:
      "From the tip upward the outline must have one radius at each distance; here it turns back or the arc does not reach.",
    accepted: "a segment that ends at or above where it starts, with an arc that runs upward all the way",
  }),
  "diameter-not-outline": ({ want }) => ({
    message: "The diameter is not that of the outline.",
    accepted: `${trim(want)}, twice the outline's greatest radius`,
  }),
  "shank-too-thick": ({ largest }) => ({
    message: "No collet of this router takes the shank.",
    accepted: `at most ${largest}`,
  }),
  "min-above-max": ({ max }) => ({
    message: "The slowest speed is above the fastest.",
    accepted: `at most ${max}`,
  }),
  "readings-do-not-rise": ({ above }) => ({
    message: "Readings must rise: a higher mark turns faster.",
    accepted: `more than ${above}`,
  }),
  "mark-off-dial": ({ first, last }) => ({
    message: "This mark is not on the dial.",
    accepted: `a mark from ${first} to ${last}, written as they are`,
  }),
  "marks-mixed": () => ({
    message: "The first and last marks must be of one kind.",
    accepted: "two numbers, or two single letters",
  }),
  "no-edges": () => ({ message: "There is nothing to cut.", accepted: "at least one edge" }),
  "setting-out-of-reach": (values) => ({
    message: "The bit cannot be set like this: its cutting edges do not reach.",
    accepted: between(values),
  }),
  "cut-too-wide": (values) => ({ message: "The bit cannot cut this wide.", accepted: between(values) }),
  "body-would-rub": (values) => ({
    message: "A part of the bit that does not cut would be pressed into the work.",
    accepted: between(values),
  }),
  "cut-does-not-suit-bit": ({ suits }) => ({
    message: "This kind of cut cannot be made with this form of bit.",
    accepted: String(suits),
  }),
  "nothing-removed": () => ({
    message: "At this setting the bit would not touch the wood.",
    accepted: "a height and fence offset at which the outline reaches into the work",
  }),
  "grew-in-sharpening": ({ maxDiameterMm, maxLengthMm, maxMassG }) => ({
    message: "A sharpening takes metal away: it leaves no bit larger or heavier than it was.",
    accepted:
      maxDiameterMm !== undefined
        ? `a diameter of at most ${trim(maxDiameterMm)} mm`
        : maxLengthMm !== undefined
          ? `an outline of at most ${trim(maxLengthMm)} mm`
          : `at most ${trim(maxMassG)} g`,
  }),
  "outline-needed": () => ({
    message: "The diameter alone does not say what this outline looks like now.",
    accepted: "the whole form as it is after the sharpening, point by point",
  }),
};

/** The English words for a fault. */
export function describeFault(fault: Fault): FaultWords {
  return WORDS[fault.code](fault.values);
}

function between({ min, max, above, below }: Values): string {
  if (below !== undefined) return `less than ${trim(below)}`;
  if (above !== undefined) return `more than ${above}`;
  if (min !== undefined && max !== undefined) return `${trim(min)} to ${trim(max)}`;
  if (max !== undefined) return `at most ${trim(max)}`;
  return min === undefined ? "a finite number" : `at least ${trim(min)}`;
}

function trim(value: number | string | undefined): string {
  return typeof value === "number" ? String(Number(value.toFixed(3))) : String(value);
}
