/** The middle of the values, or the mean of the two in the middle; undefined for none. `median([3, 1, 2])` is 2. */
export function median(values: readonly number[]): number | undefined {
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  return upper === undefined || lower === undefined ? undefined : lower + (upper - lower) / 2;
}
