import { DomainError } from "./fault.ts";

/**
 * The greatest multiple of 10^−decimals that is not above the value: what a speed is cut to before anyone reads it.
 * Works on the decimal digits, so 0.3 to one decimal is 0.3. Never above the value, never −0.
 * Throws a DomainError (`not-finite`) for NaN and infinities. `floorTo(124.96, 1)` is 124.9.
 */
export function floorTo(value: number, decimals: number): number {
  const steps = Math.floor(shiftDecimalPoint(finite(value), decimals));
  const floored = shiftDecimalPoint(steps, -decimals);
  // The shift itself rounds in the sixteenth digit; a limit must not be passed even there.
  return plusZero(floored <= value ? floored : shiftDecimalPoint(steps - 1, -decimals));
}

/**
 * The nearest multiple of 10^−decimals, halves away from zero, judged on the decimal digits: `roundTo(1.005, 2)` is 1.01.
 * Never −0. Throws a DomainError (`not-finite`) for NaN and infinities.
 */
export function roundTo(value: number, decimals: number): number {
  const size = Math.round(shiftDecimalPoint(Math.abs(finite(value)), decimals));
  return plusZero(Math.sign(value) * shiftDecimalPoint(size, -decimals));
}

function finite(value: number): number {
  if (Number.isFinite(value)) return value;
  throw new DomainError([{ pointer: "", code: "not-finite", values: {} }]);
}

/** value·10^places by moving the point in the digits, which multiplying would not do exactly. */
function shiftDecimalPoint(value: number, places: number): number {
  const [digits, exponent] = String(value).split("e");
  return Number(`${digits}e${Number(exponent ?? 0) + places}`);
}

function plusZero(value: number): number {
  return value === 0 ? 0 : value;
}
