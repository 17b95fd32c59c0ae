/** A name may differ from what was written in this share of its letters and still be the one that was meant. Ours. */
const MOST_DIFFERENT = 0.4;

/**
 * The name that comes nearest to what somebody wrote: the same letters whatever their case and what stands between them, or
 * else the one with the fewest letters changed, missing or too many (Levenshtein's distance). Undefined when none is near.
 */
export function nearestName(written: string, names: readonly string[]): string | undefined {
  const letters = lettersOf(written);
  if (letters === "") return undefined;
  const [best] = names
    .map((name) => ({ name, distance: distanceBetween(letters, lettersOf(name)) }))
    .filter(({ name, distance }) => distance <= MOST_DIFFERENT * Math.max(letters.length, name.length))
    .sort((one, other) => one.distance - other.distance);
  return best?.name;
}

function lettersOf(text: string): string {
  return text.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, "");
}

function distanceBetween(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (const [index, letter] of [...one].entries()) {
    const next = [index + 1];
    for (const [place, otherLetter] of [...other].entries()) {
      const change = (row[place] ?? 0) + (letter === otherLetter ? 0 : 1);
      next.push(Math.min(change, (row[place + 1] ?? 0) + 1, (next[place] ?? 0) + 1));
    }
    row = next;
  }
  return row.at(-1) ?? 0;
}
