/**
 * Compares two lists of ranks, the weightiest first: negative if the first that differs is smaller in `one`, 0 if none does. A list that ends
 * earlier comes after.
 *
 * @example
 * compareRanks([0, 3], [0, 5]) // → -2
 * compareRanks([1], [0, 5]) // → 1
 */
export function compareRanks(one: readonly number[], other: readonly number[]): number {
  for (const [index, rank] of one.entries()) {
    const difference = rank - (other[index] ?? Number.POSITIVE_INFINITY);
    if (difference !== 0) return difference;
  }
  return one.length === other.length ? 0 : 1;
}
