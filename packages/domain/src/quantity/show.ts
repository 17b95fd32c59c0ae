import { floorTo, roundTo } from "./round.ts";
import {
  G_PER_OUNCE,
  G_PER_POUND,
  M_PER_S_PER_MPH,
  MM_PER_FOOT,
  MM_PER_INCH,
  MM_PER_M,
  N_PER_POUND_FORCE,
} from "./units.ts";

/** The two systems a person may read in. */
export type UnitSystem = "imperial" | "metric";

/** The finest mark on a shop rule: 1/64 in. Source: common practice. */
const RULE_MARKS_PER_INCH = 64;
/** How far a length may be from such a mark and still be shown by it, mm. */
const RULE_MARK_SLACK_MM = 0.05;
const OUNCES_PER_POUND = G_PER_POUND / G_PER_OUNCE;
/** Digits kept of a value below one, if fixed decimals would leave none. */
const SMALL_VALUE_DIGITS = 3;
const DIGITS_IN_A_GROUP = 3;
/** Decimals at which the last binary digit of a conversion no longer shows. */
const CONVERSION_DECIMALS = 9;

/**
 * A length as text. Metric: "88.9 mm". Imperial: the fraction of an inch on a rule if it is exact to 0.05 mm and does not
 * vanish ("3-1/2 in"), else decimals ("0.472 in"). `showLength(88.9, "imperial")` is "3-1/2 in".
 */
export function showLength(mm: number, units: UnitSystem): string {
  if (units === "metric") return `${decimalText(mm, 2)} mm`;
  return `${ruleText(mm) ?? decimalText(mm / MM_PER_INCH, 3)} in`;
}

/** Up to here a rule of thumb is told to the millimetre, beyond to half a centimetre, mm. Ours. */
const ROUGH_FROM_MM = 50;
const ROUGH_STEP_MM = 5;

/** A length that comes of a rule of thumb as text: "100 mm", "4 in". */
export function showAboutLength(mm: number, units: UnitSystem): string {
  const stepMm = mm < ROUGH_FROM_MM ? 1 : ROUGH_STEP_MM;
  return units === "metric" ? `${Math.round(mm / stepMm) * stepMm} mm` : showLength(mm, units);
}

/** A length far below a millimetre as text: "5 µm", "0.2 thousandths of an inch". */
export function showFineLength(mm: number, units: UnitSystem): string {
  if (units === "metric") return `${decimalText(mm * 1000, 0)} µm`;
  return `${decimalText((mm / MM_PER_INCH) * 1000, 1)} thousandths of an inch`;
}

/** A mass as text: "340 g"; "12 oz", from a pound up "1 lb 2 oz". */
export function showMass(g: number, units: UnitSystem): string {
  if (units === "metric") return `${decimalText(g, 1)} g`;
  const ounces = roundTo(g / G_PER_OUNCE, 1);
  if (ounces < OUNCES_PER_POUND) return `${decimalText(g / G_PER_OUNCE, 1)} oz`;
  const pounds = Math.floor(ounces / OUNCES_PER_POUND);
  const rest = roundTo(ounces - pounds * OUNCES_PER_POUND, 1);
  return rest === 0 ? `${pounds} lb` : `${pounds} lb ${rest} oz`;
}

/** A speed as text, always cut down so that none reads as above a limit it keeps: "55.8 m/s", "124.9 mph". */
export function showSpeed(mPerS: number, units: UnitSystem): string {
  if (units === "metric") return `${floorTo(mPerS, 1)} m/s`;
  return `${floorTo(roundTo(mPerS / M_PER_S_PER_MPH, CONVERSION_DECIMALS), 1)} mph`;
}

/** A rotational speed as text, cut down to whole turns: `showRotation(12000.9)` is "12,000 rpm". */
export function showRotation(rpm: number): string {
  return `${grouped(String(floorTo(rpm, 0)))} rpm`;
}

/** A feed as text: "4.8 m/min", "15.7 ft/min". */
export function showFeed(mPerMin: number, units: UnitSystem): string {
  if (units === "metric") return `${decimalText(mPerMin, 2)} m/min`;
  return `${decimalText((mPerMin * MM_PER_M) / MM_PER_FOOT, 1)} ft/min`;
}

/** An area as text: "100 mm²", "0.155 in²". */
export function showArea(mm2: number, units: UnitSystem): string {
  if (units === "metric") return `${decimalText(mm2, 1)} mm²`;
  return `${decimalText(mm2 / MM_PER_INCH ** 2, 3)} in²`;
}

/** A force as text: "33.7 N", "7.6 lbf". */
export function showForce(n: number, units: UnitSystem): string {
  if (units === "metric") return `${decimalText(n, 1)} N`;
  return `${decimalText(n / N_PER_POUND_FORCE, 1)} lbf`;
}

/** Inches as a mixed number in 64ths, reduced; undefined if no mark of the rule is near enough. */
function ruleText(mm: number): string | undefined {
  const marks = Math.round((Math.abs(mm) / MM_PER_INCH) * RULE_MARKS_PER_INCH);
  const offMm = Math.abs(Math.abs(mm) - (marks * MM_PER_INCH) / RULE_MARKS_PER_INCH);
  if (roundTo(offMm, CONVERSION_DECIMALS) > RULE_MARK_SLACK_MM || (marks === 0 && mm !== 0)) return undefined;
  const whole = Math.floor(marks / RULE_MARKS_PER_INCH);
  const rest = marks % RULE_MARKS_PER_INCH;
  const sign = mm < 0 ? "-" : "";
  if (rest === 0) return `${sign}${whole}`;
  const divisor = greatestPowerOfTwoIn(rest);
  const fraction = `${rest / divisor}/${RULE_MARKS_PER_INCH / divisor}`;
  return sign + (whole === 0 ? fraction : `${whole}-${fraction}`);
}

function greatestPowerOfTwoIn(count: number): number {
  return count % 2 === 0 ? 2 * greatestPowerOfTwoIn(count / 2) : 1;
}

function decimalText(value: number, decimals: number): string {
  const size = Math.abs(value);
  // The place of the first digit: 0.0045 has it in the third decimal.
  const firstDigit = size > 0 && size < 1 ? Math.ceil(-Math.log10(size)) : 0;
  const kept = Math.max(decimals, firstDigit + SMALL_VALUE_DIGITS - 1);
  return plainDigits(roundTo(value, firstDigit === 0 ? decimals : Math.min(kept, CONVERSION_DECIMALS)));
}

/** Never "1e-7": text a person reads. */
function plainDigits(value: number): string {
  const text = String(value);
  return text.includes("e") ? value.toFixed(CONVERSION_DECIMALS).replace(/\.?0+$/, "") : text;
}

/** Whole digits with a comma before each three from the end. */
function grouped(digits: string): string {
  const first = digits.length - DIGITS_IN_A_GROUP;
  if (first <= 0) return digits;
  return `${grouped(digits.slice(0, first))},${digits.slice(first)}`;
}
