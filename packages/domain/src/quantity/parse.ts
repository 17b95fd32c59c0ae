import type { Fault } from "./fault.ts";
import {
  G_PER_KG,
  G_PER_OUNCE,
  G_PER_POUND,
  M_PER_S_PER_MPH,
  MM_PER_FOOT,
  MM_PER_INCH,
  MM_PER_M,
  SECONDS_PER_MINUTE,
} from "./units.ts";

export type LengthUnit = "mm" | "cm" | "m" | "in" | "ft";
export type MassUnit = "g" | "kg" | "oz" | "lb";
export type SpeedUnit = "m/s" | "mph" | "km/h" | "ft/min";
export type RotationUnit = "rpm";

/** The text did not read as a quantity: one fault, pointer at the text itself. */
export type Unreadable = { readonly ok: false; readonly fault: Fault<"not-a-quantity"> };
export type ParsedLength = { readonly ok: true; readonly mm: number } | Unreadable;
export type ParsedMass = { readonly ok: true; readonly g: number } | Unreadable;
export type ParsedSpeed = { readonly ok: true; readonly mPerS: number } | Unreadable;
export type ParsedRotation = { readonly ok: true; readonly rpm: number } | Unreadable;

/** One unit: how it may be written, its exact size, and the larger unit it may follow ("1 lb 2 oz"). */
type UnitSpec = { readonly spellings: readonly string[]; readonly size: number; readonly follows?: string };
type Units<Name extends string> = Readonly<Record<Name, UnitSpec>>;

const LENGTHS: Units<LengthUnit> = {
  mm: { spellings: ["mm", "millimeter", "millimeters", "millimetre", "millimetres"], size: 1 },
  cm: { spellings: ["cm", "centimeter", "centimeters", "centimetre", "centimetres"], size: 10 },
  m: { spellings: ["m", "meter", "meters", "metre", "metres"], size: MM_PER_M },
  in: { spellings: ["in", "inch", "inches", '"'], size: MM_PER_INCH, follows: "ft" },
  ft: { spellings: ["ft", "foot", "feet", "'"], size: MM_PER_FOOT },
};

const MASSES: Units<MassUnit> = {
  g: { spellings: ["g", "gram", "grams"], size: 1 },
  kg: { spellings: ["kg", "kilogram", "kilograms"], size: G_PER_KG },
  oz: { spellings: ["oz", "ounce", "ounces"], size: G_PER_OUNCE, follows: "lb" },
  lb: { spellings: ["lb", "lbs", "pound", "pounds"], size: G_PER_POUND },
};

const SPEEDS: Units<SpeedUnit> = {
  "m/s": { spellings: ["m/s"], size: 1 },
  mph: { spellings: ["mph", "mi/h"], size: M_PER_S_PER_MPH },
  "km/h": { spellings: ["km/h"], size: MM_PER_M / SECONDS_PER_MINUTE ** 2 },
  "ft/min": { spellings: ["ft/min"], size: MM_PER_FOOT / MM_PER_M / SECONDS_PER_MINUTE },
};

const ROTATIONS: Units<RotationUnit> = { rpm: { spellings: ["rpm", "r/min"], size: 1 } };

/** Longer text is not a quantity, and is not worth looking at. */
const LONGEST_TEXT = 40;

/** A whole number may group its thousands with commas; "0,500" is refused, because it may be meant as a decimal. */
const WHOLE = String.raw`[1-9]\d{0,2}(?:,\d{3})+|\d+`;
const FRACTION = String.raw`(?<numerator>\d+)/(?<denominator>\d+)`;
const NUMBER = new RegExp(
  String.raw`^(?:(?:(?<whole>${WHOLE})(?:-|\s+))?${FRACTION}|(?<decimal>(?:${WHOLE})(?:\.\d+)?|\.\d+))$`,
);
/** The number ends at its last digit; what is left is the unit, also as in "1/2-in". "1 lb 2 oz" is taken apart before. */
const NUMBER_AND_UNIT = /^(?<number>.*\d)(?:\s*-(?=[a-z])|\s*)(?<unit>\D*)$/;
/** Digits of a quantity that can be relied on: conversions are exact, and binary arithmetic errs in the 16th. */
const EXACT_DIGITS = 15;
const TWO_PARTS = /^(?<larger>\d+\s*(?:[a-z]+\.?|'))\s*(?<smaller>\d.*)$/;

/**
 * Length in mm from text such as "3-1/2 in", `3 1/2"`, "3½ in", "88.9 mm" or "2 ft 6 in". Zero or more; a number without a unit
 * only if a default unit is given. Anything else gives a `not-a-quantity` fault; nothing is thrown.
 * @example
 * parseLength("3-1/2 in") // → { ok: true, mm: 88.9 }
 * parseLength("12") // → { ok: false, fault: { code: "not-a-quantity" } }
 */
export function parseLength(text: string, defaultUnit?: LengthUnit): ParsedLength {
  const mm = parseQuantity(text, LENGTHS, defaultUnit);
  return mm === undefined ? unreadable(text, LENGTHS, ["3-1/2 in", "88.9 mm"]) : { ok: true, mm };
}

/**
 * Mass in g from text such as "12 oz", "340 g" or "1 lb 2 oz"; otherwise as `parseLength`.
 * @example
 * parseMass("1 lb").g // → 453.592_37
 */
export function parseMass(text: string, defaultUnit?: MassUnit): ParsedMass {
  const g = parseQuantity(text, MASSES, defaultUnit);
  return g === undefined ? unreadable(text, MASSES, ["12 oz", "340 g", "1 lb 2 oz"]) : { ok: true, g };
}

/**
 * Speed in m/s from text such as "125 mph" or "56 m/s"; otherwise as `parseLength`.
 * @example
 * parseSpeed("125 mph").mPerS // → 55.88
 */
export function parseSpeed(text: string, defaultUnit?: SpeedUnit): ParsedSpeed {
  const mPerS = parseQuantity(text, SPEEDS, defaultUnit);
  return mPerS === undefined ? unreadable(text, SPEEDS, ["125 mph", "56 m/s"]) : { ok: true, mPerS };
}

/**
 * Rotational speed in rpm from text such as "22,000 rpm"; otherwise as `parseLength`.
 * @example
 * parseRotation("22,000 rpm") // → { ok: true, rpm: 22_000 }
 */
export function parseRotation(text: string, defaultUnit?: RotationUnit): ParsedRotation {
  const rpm = parseQuantity(text, ROTATIONS, defaultUnit);
  return rpm === undefined ? unreadable(text, ROTATIONS, ["22,000 rpm"]) : { ok: true, rpm };
}

function parseQuantity<Name extends string>(
  text: string,
  units: Units<Name>,
  defaultUnit: Name | undefined,
): number | undefined {
  if (text.length > LONGEST_TEXT) return undefined;
  const plain = plainCharacters(text);
  const size = parseTwoParts(plain, units) ?? parsePart(plain, units, defaultUnit)?.size;
  return size !== undefined && Number.isFinite(size) ? Number(size.toPrecision(EXACT_DIGITS)) : undefined;
}

/** The text in lower case, its typographic fractions, primes, quotes and hyphens as the keyboard has them. */
export function plainCharacters(text: string): string {
  return text
    .replace(/[‐‑–]/g, "-")
    .replace(/-?[¼-¾⅐-⅞]/g, (fraction) => ` ${fraction.replace("-", "").normalize("NFKC").replace("⁄", "/")}`)
    .replace(/[″”“]|''/g, '"')
    .replace(/[′’‘]/g, "'")
    .trim()
    .toLowerCase();
}

/** "1 lb 2 oz": a whole number of the larger unit, then less than one more of it in the smaller. */
function parseTwoParts<Name extends string>(text: string, units: Units<Name>): number | undefined {
  const { larger: largerText = "", smaller: smallerText = "" } = TWO_PARTS.exec(text)?.groups ?? {};
  const larger = parsePart(largerText, units, undefined);
  const smaller = parsePart(smallerText, units, undefined);
  if (larger === undefined || smaller === undefined) return undefined;
  if (units[smaller.unit].follows !== larger.unit || smaller.size >= units[larger.unit].size)
    return undefined;
  return larger.size + smaller.size;
}

function parsePart<Name extends string>(
  text: string,
  units: Units<Name>,
  defaultUnit: Name | undefined,
): { readonly size: number; readonly unit: Name } | undefined {
  const { number: digits = "", unit: spelling = "" } = NUMBER_AND_UNIT.exec(text)?.groups ?? {};
  const number = parseNumber(digits);
  const unit = spelling === "" ? defaultUnit : unitSpelt(spelling, units);
  if (number === undefined || unit === undefined) return undefined;
  return { size: number * units[unit].size, unit };
}

function parseNumber(text: string): number | undefined {
  const { decimal, whole, numerator, denominator } = NUMBER.exec(text)?.groups ?? {};
  if (decimal !== undefined) return digitsToNumber(decimal);
  if (numerator === undefined || Number(denominator) === 0) return undefined;
  const fraction = Number(numerator) / Number(denominator);
  if (whole === undefined) return fraction;
  // "3-7/2" is a slip of the pen, not three and seven halves.
  return fraction < 1 ? digitsToNumber(whole) + fraction : undefined;
}

function digitsToNumber(digits: string): number {
  return Number(digits.replaceAll(",", ""));
}

function unitSpelt<Name extends string>(spelling: string, units: Units<Name>): Name | undefined {
  const bare = spelling.replace(/(?<=[a-z])\.$/, "");
  return names(units).find((name) => units[name].spellings.includes(bare));
}

function names<Name extends string>(units: Units<Name>): Name[] {
  const known = (key: string): key is Name => Object.hasOwn(units, key);
  return Object.keys(units).filter(known);
}

function unreadable(text: string, units: Units<string>, examples: readonly string[]): Unreadable {
  const values = { given: text.slice(0, LONGEST_TEXT), units: names(units), examples };
  return { ok: false, fault: { pointer: "", code: "not-a-quantity", values } };
}
