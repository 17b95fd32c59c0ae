import type { Fault, Meant } from "../quantity/fault.ts";
import { G_PER_OUNCE, G_PER_POUND, MM_PER_INCH } from "../quantity/units.ts";
import type { Bit } from "./bit.ts";
import { formDiameterMm } from "./diameter.ts";
import type { Form } from "./form/registry.ts";
import { bitSolid } from "./solid.ts";

/**
 * Lightest bit of an outline as a share of its estimate. Ours: deep gullets leave about three fifths of the head, and a short shank
 * is two thirds of the one assumed.
 */
const LIGHTEST_RATIO = 0.6;

/** Heaviest. Ours: solid carbide is 14.9 / 7.85 = 1.9 times as dense as steel (from memory), and a long shank adds half as much. */
const HEAVIEST_RATIO = 3;

/** The least run-out an indicator in hundredths of a millimetre can tell from none, total reading. Source: common practice. */
const LEAST_RUN_OUT_MM = 0.005;

/** A shank is not pushed home to the head's fillet: some of it shows. Source: common practice, about 1/16 in; here less. */
const LEAST_STICK_OUT_MM = 1;

/** The longest usual shank, 3 in, and the least of it that a collet must hold, 3/4 in. Source: common practice. */
const LONGEST_SHANK_MM = 76.2;
const LEAST_HELD_MM = 19.05;

/** A bit is never sharpened to less than this share of its diameter. Ours: its tips are gone long before. */
const LEAST_SHARPENED_RATIO = 0.5;

type MassSlip = { readonly factor: number; readonly unit: Meant["unit"] };

/** What slips of the pen multiply a mass by. */
const MASS_SLIPS: readonly MassSlip[] = [
  { factor: G_PER_OUNCE, unit: "oz" },
  { factor: 10, unit: "g" },
  { factor: 0.1, unit: "g" },
  { factor: G_PER_POUND, unit: "lb" },
];

/**
 * What a person measured of a bit that its geometry does not allow: a mass its outline cannot have, and lengths that no shank and
 * no collet give. For a bit that is sound otherwise. Pointers start at the bit.
 * @example
 * const form = { kind: "straight", diameterMm: 50.8, cuttingLengthMm: 31.75 };
 * unlikelyBitFaults({ form, shankDiameterMm: 12.7, wings: 2, massG: 9 })[0].code // → "mass-not-of-outline"
 */
export function unlikelyBitFaults(bit: Bit): Fault[] {
  return [
    ...massFaults(bit),
    ...runOutFaults(bit.runOutMm),
    ...lengthFaults("/stickOutMm", "stick-out", bit.stickOutMm, {
      min: LEAST_STICK_OUT_MM,
      max: LONGEST_SHANK_MM - LEAST_HELD_MM,
    }),
  ];
}

/**
 * A run-out, total indicator reading, mm, that no indicator of a workshop shows: less than half of a hundredth. Pointers start at
 * what it was given with.
 * @example
 * runOutFaults(0.002)[0].code // → "length-not-likely"
 */
export function runOutFaults(runOutMm: number | undefined): Fault[] {
  return lengthFaults("/runOutMm", "run-out", runOutMm, { min: LEAST_RUN_OUT_MM, max: 1 });
}

/**
 * A smallest usable diameter that would never take the bit out of use. Pointers start at the bit.
 * @example
 * smallestUsableFaults({ kind: "straight", diameterMm: 50.8, cuttingLengthMm: 25 }, 1.9)[0].code // → "length-not-likely"
 */
export function smallestUsableFaults(form: Form, smallestUsableDiameterMm: number | undefined): Fault[] {
  const diameterMm = formDiameterMm(form);
  return lengthFaults("/smallestUsableDiameterMm", "smallest-diameter", smallestUsableDiameterMm, {
    min: LEAST_SHARPENED_RATIO * diameterMm,
  });
}

function massFaults(bit: Bit): Fault[] {
  const { massG: given } = bit;
  if (given === undefined) return [];
  const { estimatedMassG: estimatedG } = bitSolid(bit);
  const min = LIGHTEST_RATIO * estimatedG;
  const max = HEAVIEST_RATIO * estimatedG;
  if (given >= min && given <= max) return [];
  const offBy = ({ factor }: MassSlip) => Math.abs(Math.log((given * factor) / estimatedG));
  const [meant] = MASS_SLIPS.filter(({ factor }) => given * factor >= min && given * factor <= max).sort(
    (one, other) => offBy(one) - offBy(other),
  );
  return [
    {
      pointer: "/massG",
      code: "mass-not-of-outline",
      values: { given, estimatedG, min, max, ...(meant && { meant: meantBy(given, meant) }) },
    },
  ];
}

/** What was typed in another unit is meant as it stands there; a slipped point is put right. */
function meantBy(given: number, { factor, unit }: MassSlip): Meant {
  return { unit, value: unit === "g" ? given * factor : given };
}

function lengthFaults(
  pointer: string,
  what: "run-out" | "stick-out" | "smallest-diameter",
  given: number | undefined,
  bounds: { readonly min: number; readonly max?: number },
): Fault[] {
  const { min, max = Number.POSITIVE_INFINITY } = bounds;
  const isLikely = (mm: number) => mm >= min && mm <= max;
  if (given === undefined || isLikely(given)) return [];
  const meant: Meant | undefined = isLikely(given * MM_PER_INCH) ? { value: given, unit: "in" } : undefined;
  return [{ pointer, code: "length-not-likely", values: { what, given, bounds, ...(meant && { meant }) } }];
}
