import { describe, expect, it } from "vitest";
import type { Fault, FaultCode, FaultValues } from "../../quantity/fault.ts";
import { describeFault } from "./faults.ts";

/** For each code its values, and what is said to be accepted. Some codes say one of several things. */
type Examples = {
  readonly [Code in FaultCode]: readonly (readonly [values: FaultValues[Code], accepted: string])[];
};

const EXAMPLES: Examples = {
  "not-a-quantity": [
    [
      { given: "x", units: ["g", "kg"], examples: ["340 g", "1 kg"] },
      'a number that is not negative and its unit (g, kg), such as "340 g", "1 kg"',
    ],
  ],
  "not-finite": [
    [{ accepted: undefined }, "a finite number"],
    [{ accepted: { min: 1, max: 80 } }, "1 to 80"],
  ],
  "out-of-range": [
    [{ given: 0, min: 1, max: 80 }, "1 to 80"],
    [{ given: 0, min: 1.00049 }, "at least 1.001"],
    [{ given: 0, min: 1.005 }, "at least 1.005"],
    [{ given: 90, max: 80.5 }, "at most 80.5"],
    [{ given: 0, above: 0 }, "more than 0"],
    [{ given: 90, max: 80.5559 }, "at most 80.555"],
    [{ given: 90, below: 12.3456 }, "less than 12.345"],
  ],
  "no-value-fits": [[{ min: 0.5, max: 40 }, "0.5 to 40, of which the rest leaves none"]],
  "unknown-choice": [[{ names: ["tip", "shank"] }, "tip, shank"]],
  "pilot-too-large": [[{ pilotDiameterMm: 30, diameterMm: 20 }, "less than 20"]],
  "profile-too-large": [[{ given: 9, max: 8 }, "at most 8"]],
  "outline-turns-back": [
    [{}, "a segment that ends at or above where it starts, with an arc that runs upward all the way"],
  ],
  "diameter-not-outline": [[{ given: 9, want: 12 }, "12, twice the outline's greatest radius"]],
  "shank-too-thick": [[{ given: 12.7, largest: 8 }, "at most 8"]],
  "min-above-max": [[{ given: 20_000, max: 10_000 }, "at most 10000"]],
  "marks-do-not-rise": [[{ least: 2 }, "at least 2"]],
  "readings-do-not-rise": [
    [{ above: 11_000 }, "more than 11000, or the same reading with isConfirmed: true"],
    [{ below: 11_000 }, "less than 11000, or the same reading with isConfirmed: true"],
  ],
  "readings-disagree": [
    [{ mark: 2, rpm: 11_000 }, "about 11000, or the same reading with isConfirmed: true"],
  ],
  "reading-outside-range": [
    [{ given: 1100, min: 20_700, max: 33_000 }, "20700 to 33000, or the same reading with isConfirmed: true"],
  ],
  "mark-off-dial": [[{ first: "A", last: "F" }, "a mark from A to F, written as they are"]],
  "marks-mixed": [[{}, "two numbers, or two single letters"]],
  "thicknesses-disagree": [
    [{ given: 18, cutMm: 19 }, "19, as the cut says, or the thickness in one place only"],
  ],
  "bushing-not-given": [[{}, "its outside diameter in mm"]],
  "longer-than-work": [[{ given: 700, max: 600 }, "at most 600"]],
  "no-edges": [[{}, "at least one edge"]],
  "setting-out-of-reach": [[{ given: 40, max: 25.4 }, "at most 25.4"]],
  "nothing-measured": [[{}, "a depth, a width, or both, as the plan asks for them"]],
  "not-measured-here": [[{}, "only what the plan's testPiece names"]],
  "not-settable-here": [[{}, "only what a height or a fence of this joint changes"]],
  "cut-too-wide": [[{ given: 40, max: 9.5 }, "at most 9.5"]],
  "body-would-rub": [[{ given: 0, min: 4 }, "at least 4"]],
  "cut-does-not-suit-bit": [
    [{ needs: "panel-raising-form", forms: [] }, "a panel-raising bit"],
    [{ needs: "joint-form", forms: ["tongue", "groove"] }, "a joint bit: tongue, groove"],
    [{ needs: "parallel-edges", forms: [] }, "a bit with parallel edges: straight, spiral or rabbet"],
    [
      { needs: "parallel-edges-without-pilot", forms: [] },
      "a bit with parallel edges and no pilot: surfacing, straight or spiral",
    ],
    [{ needs: "edges-only", forms: [] }, "a bit without a pilot bearing or an arbor"],
    [
      { needs: "flush-bearing", forms: [] },
      "a flush-trim bit with a bearing as wide as its edges; sharpened edges no longer cut flush, so fit a smaller bearing",
    ],
  ],
  "nothing-removed": [[{}, "a height and fence offset at which the outline reaches into the work"]],
  "grew-in-sharpening": [
    [{ maxDiameterMm: 12.75 }, "a diameter of at most 12.75 mm"],
    [{ maxLengthMm: 25.45 }, "an outline of at most 25.45 mm"],
    [{ maxMassG: 59 }, "at most 59 g"],
  ],
  "sharpened-too-far": [[{ minDiameterMm: 10.16 }, "a diameter of at least 10.16 mm"]],
  "mass-not-of-outline": [[{ given: 9, estimatedG: 268.4, min: 161.04, max: 805.2 }, "162 to 805"]],
  "length-not-likely": [
    [{ what: "run-out", given: 0.002, bounds: { min: 0.005, max: 1 } }, "0.005 to 1"],
    [{ what: "smallest-diameter", given: 2, bounds: { min: 6.35 } }, "at least 6.35"],
  ],
  "stock-too-thin": [[{ given: 6, above: 13.5 }, "more than 13.5"]],
  "id-given-twice": [[{ given: "rails" }, "an id of its own for each set-up"]],
  "unknown-set-up": [[{ given: "rails" }, "ids of set-ups in the same list"]],
  "set-ups-in-circle": [[{ setupIds: ["rails", "stiles"] }, "set-ups that wait in no circle"]],
  "profile-doubles-back": [
    [
      { xMm: 9, zMm: 6 },
      "a wall that never comes back as it rises from one face to the other, or as it goes in from the edge along one face",
    ],
  ],
  "profile-leaves-stock": [[{ xMm: -3, zMm: 6 }, "an arc that stays inside the stock between its ends"]],
  "profile-end-inside-stock": [
    [
      { xMm: 9, zMm: 6, thicknessMm: 19 },
      "a point with x 0 on the edge, z 0 on the front face or z 19 on the back face",
    ],
  ],
  "profile-removes-nothing": [[{}, "a wall that goes into the stock"]],
  "outline-needed": [[{}, "the whole form as it is after the sharpening, point by point"]],
};

function isCode(code: string): code is FaultCode {
  return Object.hasOwn(EXAMPLES, code);
}

describe.each(Object.keys(EXAMPLES).filter(isCode))("the fault %s", (code) => {
  it("says in one sentence what is wrong, and what is accepted", () => {
    for (const [fault, accepted] of faultsOf(code)) {
      expect(describeFault(fault)).toEqual({
        message: expect.stringMatching(/^[A-Z].*\.$/),
        accepted,
      });
    }
  });
});

function faultsOf<Code extends FaultCode>(code: Code): (readonly [Fault<Code>, string])[] {
  return EXAMPLES[code].map(([values, accepted]) => [{ pointer: "/x", code, values }, accepted]);
}

it("the compiler refuses a fault with a misspelt value, or with the values of another code", () => {
  const faults: Fault[] = [
    // @ts-expect-error The value is called `max`.
    { pointer: "/x", code: "cut-too-wide", values: { given: 1, maxMm: 2 } },
    // @ts-expect-error The values are those of "unknown-choice".
    { pointer: "/x", code: "mark-off-dial", values: { names: ["A"] } },
  ];
  expect(faults).toHaveLength(2);
});
