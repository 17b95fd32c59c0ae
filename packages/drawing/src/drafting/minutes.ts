/** Minutes of work in whole ones. */
export function minutesText(min: number): string {
  const whole = Math.round(min);
  return whole < 1 && min > 0 ? "under 1 min" : `${whole} min`;
}
