/** Thousandths of a millimetre: finer than any printer, and the hundredth of a millimetre is still there at a tenth of the size. */
const PER_MM = 1000;

/** A number of mm as short as it can be written to a thousandth. */
export function short(mm: number): string {
  const rounded = Math.round(mm * PER_MM) / PER_MM;
  // Rounding leaves a minus before a nought.
  return rounded === 0 ? "0" : String(rounded);
}
