/**
 * How many slips lie between two words: letters changed, missing, too many, or two neighbours swapped (optimal string
 * alignment, Damerau 1964). 0 for the same word.
 * @example
 * editDistance("sprial", "spiral") // → 1
 */
export function editDistance(one: string, other: string): number {
  const from = [...one];
  const to = [...other];
  let beforeLast: readonly number[] = [];
  let last: readonly number[] = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (const [index, letter] of from.entries()) {
    const row = [index + 1];
    for (const [place, otherLetter] of to.entries()) {
      const changed = (last[place] ?? 0) + (letter === otherLetter ? 0 : 1);
      const isSwapped = letter === to[place - 1] && otherLetter === from[index - 1];
      const swapped = isSwapped ? (beforeLast[place - 1] ?? 0) + 1 : changed;
      row.push(Math.min(changed, swapped, (last[place + 1] ?? 0) + 1, (row[place] ?? 0) + 1));
    }
    beforeLast = last;
    last = row;
  }
  return last.at(-1) ?? 0;
}
