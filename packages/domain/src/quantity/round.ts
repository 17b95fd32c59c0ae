import { DomainError } from "./fault.ts";

/** Below this, a double's last digits lie far under `CLEARANCE`. */
const EXACT_BELOW = 1e9;
const CLEARANCE = 1e-6;
/** The scales of all usual decimals: a power is computed far slower than it is looked up. */
const POWERS_OF_TEN: readonly number[] = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];

/**
 * The greatest multiple of 10^−decimals that is not above the value: what a speed is cut to before anyone reads it.
 * Works on the decimal digits, so 0.3 to one decimal is 0.3. Never above the value, never −0.
 * Throws a DomainError (`not-finite`) for NaN and infinities.
 * @example
 * floorTo(124.96, 1) // → 124.9
 */
export function floorTo(value: number, decimals: number): number {
  const scale = POWERS_OF_TEN[decimals] ?? 10 ** decimals;
  const scaled = finite(value) * scale;
  if (isMultiple(value, scaled, scale)) return plusZero(value);
  // Well clear of a whole step, plain arithmetic is exact: a whole number over a power of ten rounds correctly.
  if (decimals >= 0 && isClearOf(scaled, Math.round(scaled))) return plusZero(Math.floor(scaled) / scale);
  const steps = Math.floor(shiftDecimalPoint(finite(value), decimals));
  const floored = shiftDecimalPoint(steps, -decimals);
  // The shift itself rounds in the sixteenth digit; a limit must not be passed even there.
  return plusZero(floored <= value ? floored : shiftDecimalPoint(steps - 1, -decimals));
}

/**
 * The nearest multiple of 10^−decimals, halves away from zero, judged on the decimal digits. Never −0.
 * Throws a DomainError (`not-finite`) for NaN and infinities.
 * @example
 * roundTo(1.005, 2) // → 1.01
 */
export function roundTo(value: number, decimals: number): number {
  const scale = POWERS_OF_TEN[decimals] ?? 10 ** decimals;
  const scaled = finite(value) * scale;
  if (decimals >= 0 && isClearOf(scaled, Math.floor(scaled) + 0.5))
    return plusZero(Math.round(scaled) / scale);
  const size = Math.round(shiftDecimalPoint(Math.abs(finite(value)), decimals));
  return plusZero(Math.sign(value) * shiftDecimalPoint(size, -decimals));
}

/** Whether a value has no more decimals than are asked for: most speeds are whole. */
function isMultiple(value: number, scaled: number, scale: number): boolean {
  return Number.isInteger(scaled) && scaled / scale === value;
}

/** Whether a scaled value is farther from a step's edge than its own last digits reach. */
function isClearOf(scaled: number, edge: number): boolean {
  return Math.abs(scaled) < EXACT_BELOW && Math.abs(scaled - edge) > CLEARANCE;
}

function finite(value: number): number {
  if (Number.isFinite(value)) return value;
  throw new DomainError([{ pointer: "", code: "not-finite", values: { accepted: undefined } }]);
}

/** value·10^places by moving the point in the digits, which multiplying would not do exactly. */
function shiftDecimalPoint(value: number, places: number): number {
  const [digits, exponent] = String(value).split("e");
  return Number(`${digits}e${Number(exponent ?? 0) + places}`);
}

function plusZero(value: number): number {
  return value === 0 ? 0 : value;
}
