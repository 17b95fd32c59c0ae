import { editDistance } from "@rimwise/domain";

/** A name may differ from what was written in this share of its letters and still be the one that was meant. Ours. */
const MOST_DIFFERENT = 0.4;

/**
 * The name that comes nearest to what somebody wrote: the same letters whatever their case and what stands between them, or
 * else the one with the fewest letters changed, missing, too many or swapped. Undefined when none is near.
 */
export function nearestName(written: string, names: readonly string[]): string | undefined {
  const letters = lettersOf(written);
  if (letters === "") return undefined;
  const [best] = names
    .map((name) => ({ name, distance: editDistance(letters, lettersOf(name)) }))
    .filter(({ name, distance }) => distance <= MOST_DIFFERENT * Math.max(letters.length, name.length))
    .sort((one, other) => one.distance - other.distance);
  return best?.name;
}

function lettersOf(text: string): string {
  return text.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, "");
}
