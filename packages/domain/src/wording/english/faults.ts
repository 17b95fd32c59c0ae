import type { BitNeed, Bounds, Fault, FaultCode, FaultValues, Meant } from "../../quantity/fault.ts";
import { showRotation } from "../../quantity/show.ts";
import { G_PER_OUNCE, G_PER_POUND, MM_PER_INCH } from "../../quantity/units.ts";

/** A fault in words: what is wrong, and what would be accepted. */
export type FaultWords = { readonly message: string; readonly accepted: string };

type Words = { readonly [Code in FaultCode]: (values: FaultValues[Code]) => FaultWords };

const NEEDS: Readonly<Record<BitNeed, (forms: readonly string[]) => string>> = {
  "panel-raising-form": () => "a panel-raising bit",
  "joint-form": (forms) => `a joint bit: ${forms.join(", ")}`,
  "parallel-edges": () => "a bit with parallel edges: straight, spiral or rabbet",
  "parallel-edges-without-pilot": () =>
    "a bit with parallel edges and no pilot: surfacing, straight or spiral",
  "edges-only": () => "a bit without a pilot bearing or an arbor",
  "flush-bearing": () =>
    "a flush-trim bit with a bearing as wide as its edges; sharpened edges no longer cut flush, so fit a smaller bearing",
};

/** Thousandths of a thousandth that rounding may have added to a bound. */
const ROUNDING = 1e-6;

/** How to give a reading that is right all the same. */
const OR_CONFIRMED = "or the same reading with isConfirmed: true";

const UNLIKELY: Readonly<Record<FaultValues["length-not-likely"]["what"], string>> = {
  "run-out": "No indicator of a workshop tells a run-out this small from none.",
  "stick-out": "No shank shows this much, or this little, between collet and head.",
  "smallest-diameter": "A bit is never sharpened this far, so it would never be taken out of use.",
};

const WORDS: Words = {
  "not-a-quantity": ({ units, examples }) => ({
    message: "This does not read as a quantity with a unit.",
    accepted: `a number that is not negative and its unit (${units.join(", ")}), such as ${examples.map((each) => `"${each}"`).join(", ")}`,
  }),
  "not-finite": ({ accepted }) => ({
    message: "This must be a finite number.",
    accepted: accepted === undefined ? "a finite number" : between(accepted),
  }),
  "out-of-range": (values) => ({
    message: "This is out of range.",
    accepted: between(values),
  }),
  "no-value-fits": (values) => ({
    message: "No value of this fits the rest of the form: another dimension must change.",
    accepted: `${between(values)}, of which the rest leaves none`,
  }),
  "unknown-choice": ({ names }) => ({
    message: "This is not one of the names known here.",
    accepted: names.join(", "),
  }),
  "pilot-too-large": ({ diameterMm }) => ({
    message: "The pilot must be smaller than the bit: with this one nothing would be cut.",
    accepted: `less than ${diameterMm}`,
  }),
  "profile-too-large": ({ max }) => ({
    message: "The profile does not fit between the pilot and the rim of the bit.",
    accepted: `at most ${atMost(max)}`,
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
  "marks-do-not-rise": ({ least }) => ({
    message: "Give readings in rising order of mark.",
    accepted: `at least ${least}`,
  }),
  "readings-do-not-rise": (values) => ({
    message: "Readings must rise: a higher mark turns faster. Read it again.",
    accepted: `${between(values)}, ${OR_CONFIRMED}`,
  }),
  "readings-disagree": ({ mark, rpm }) => ({
    message: `Mark ${mark} was read at ${showRotation(rpm)} as well, and has one speed. Read it again.`,
    accepted: `about ${rpm}, ${OR_CONFIRMED}`,
  }),
  "reading-outside-range": ({ given, min, max }) => ({
    message: `This router does not run at ${showRotation(given)}. Read it again, and look at its plate.`,
    accepted: `${min} to ${max}, ${OR_CONFIRMED}`,
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
  "cut-does-not-suit-bit": ({ needs, forms }) => ({
    message: "This kind of cut cannot be made with this form of bit.",
    accepted: NEEDS[needs](forms),
  }),
  "nothing-removed": () => ({
    message: "At this setting the bit would not touch the wood.",
    accepted: "a height and fence offset at which the outline reaches into the work",
  }),
  "grew-in-sharpening": (values) => ({
    message: "A sharpening takes metal away: it leaves no bit larger or heavier than it was.",
    accepted:
      "maxDiameterMm" in values
        ? `a diameter of at most ${atMost(values.maxDiameterMm)} mm`
        : "maxLengthMm" in values
          ? `an outline of at most ${atMost(values.maxLengthMm)} mm`
          : `at most ${atMost(values.maxMassG)} g`,
  }),
  "sharpened-too-far": ({ minDiameterMm }) => ({
    message: "One sharpening does not take this much off. Measure it again.",
    accepted: `a diameter of at least ${trim(minDiameterMm)} mm`,
  }),
  "mass-not-of-outline": ({ estimatedG, min, max, meant }) => ({
    message: `Its outline gives about ${Math.round(estimatedG)} g. ${meant === undefined ? "Weigh it again." : didYouMean(meant)}`,
    accepted: `${Math.ceil(min)} to ${Math.floor(max)}`,
  }),
  "length-not-likely": ({ what, bounds, meant }) => ({
    message: `${UNLIKELY[what]} ${meant === undefined ? "Measure it again." : didYouMean(meant)}`,
    accepted: between(bounds),
  }),
  "stock-too-thin": ({ above }) => ({
    message: "At this height the bit cuts through the whole thickness and leaves no tongue.",
    accepted: `more than ${trim(above)}`,
  }),
  "thicknesses-disagree": ({ cutMm }) => ({
    message: "The work has one thickness, and the cut gives another.",
    accepted: `${trim(cutMm)}, as the cut says, or the thickness in one place only`,
  }),
  "bushing-not-given": () => ({
    message: "A bushing guides this cut, and its size is not given.",
    accepted: "its outside diameter in mm",
  }),
  "longer-than-work": ({ max }) => ({
    message: "This edge is longer than its side of the work.",
    accepted: `at most ${atMost(max)}`,
  }),
  "nothing-measured": () => ({
    message: "Nothing was measured on the test piece.",
    accepted: "a depth, a width, or both, as the plan asks for them",
  }),
  "not-measured-here": () => ({
    message: "This is not what the test piece of this cut shows.",
    accepted: "only what the plan's testPiece names",
  }),
  "id-given-twice": ({ given }) => ({
    message: `More than one set-up is called "${given}".`,
    accepted: "an id of its own for each set-up",
  }),
  "unknown-set-up": ({ given }) => ({
    message: `There is no set-up "${given}" to wait for.`,
    accepted: "ids of set-ups in the same list",
  }),
  "set-ups-in-circle": ({ setupIds }) => ({
    message: `Each of these set-ups waits for the next, and the last for the first, so none could start: ${setupIds.map((id) => `"${id}"`).join(", ")}.`,
    accepted: "set-ups that wait in no circle",
  }),
  "profile-doubles-back": ({ xMm, zMm }) => ({
    message: `From x ${trim(xMm)}, z ${trim(zMm)} the wall doubles back, so that no side of the work shows all of it. Ask for an undercut by its form.`,
    accepted:
      "a wall that never comes back as it rises from one face to the other, or as it goes in from the edge along one face",
  }),
  "profile-leaves-stock": ({ xMm, zMm }) => ({
    message: `This arc leaves the stock at x ${trim(xMm)}, z ${trim(zMm)}.`,
    accepted: "an arc that stays inside the stock between its ends",
  }),
  "profile-end-inside-stock": ({ thicknessMm }) => ({
    message: "The wall must start and end on the surface of the stock; this end is inside it.",
    accepted: `a point with x 0 on the edge, z 0 on the front face or z ${trim(thicknessMm)} on the back face`,
  }),
  "profile-removes-nothing": () => ({
    message: "This wall runs along the surface of the stock: there is nothing to remove.",
    accepted: "a wall that goes into the stock",
  }),
  "not-settable-here": () => ({
    message: "No setting of this joint changes it: the bits or their bearings decide.",
    accepted: "only what a height or a fence of this joint changes",
  }),
  "outline-needed": () => ({
    message: "The diameter alone does not say what this outline looks like now.",
    accepted: "the whole form as it is after the sharpening, point by point",
  }),
};

/**
 * The English words for a fault: what is wrong, and what would be accepted.
 * @example
 * describeFault({ pointer: "/edges", code: "no-edges", values: {} }).accepted // → "at least one edge"
 */
export function describeFault<Code extends FaultCode>(fault: Fault<Code>): FaultWords {
  return WORDS[fault.code](fault.values);
}

function didYouMean({ value, unit }: Meant): string {
  switch (unit) {
    case "g":
      return `Did you mean ${trim(value)} g?`;
    case "oz":
      return `Did you mean ${value} oz (${Math.round(value * G_PER_OUNCE)} g)?`;
    case "lb":
      return `Did you mean ${value} lb (${Math.round(value * G_PER_POUND)} g)?`;
    case "in":
      return `Did you mean ${value} in (${trim(value * MM_PER_INCH)} mm)?`;
  }
}

function between(bounds: Bounds): string {
  if ("below" in bounds) return `less than ${atMost(bounds.below)}`;
  if ("above" in bounds) return `more than ${bounds.above}`;
  if ("min" in bounds && "max" in bounds && bounds.max !== undefined)
    return `${atLeast(bounds.min)} to ${atMost(bounds.max)}`;
  return "max" in bounds ? `at most ${atMost(bounds.max)}` : `at least ${atLeast(bounds.min)}`;
}

/** A bound to thousandths, inside itself: what is said to be accepted is. */
function atMost(value: number): string {
  return trim(Math.floor(value * 1000 + ROUNDING) / 1000);
}

function atLeast(value: number): string {
  return trim(Math.ceil(value * 1000 - ROUNDING) / 1000);
}

function trim(value: number): string {
  return String(Number(value.toFixed(3)));
}
