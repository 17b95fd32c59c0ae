import { tradeWords } from "./bit-words.ts";
import { editDistance } from "./edit-distance.ts";

/** What a mistyped word may have been meant as: words written together, or any of the words nearest to it. */
export type Correction =
  | { readonly kind: "joined"; readonly words: readonly string[] }
  | { readonly kind: "near"; readonly anyOf: readonly string[] };

/** Below this nothing is corrected: every short word is near another. Ours. */
const SHORTEST_CORRECTED = 4;
/** From this many letters on, two slips are forgiven instead of one. Ours. */
const SHORTEST_WITH_TWO_SLIPS = 7;

/**
 * What a word that no bit of the trade is called by was probably meant as; undefined when it is such a word, the beginning of
 * one, or near to none.
 * @example
 * correctWord("rond") // → { kind: "near", anyOf: ["round"] }
 */
export function correctWord(word: string): Correction | undefined {
  const known = tradeWords();
  if (word.length < SHORTEST_CORRECTED || known.has(word)) return undefined;
  const words = [...known];
  if (words.some((each) => each.startsWith(word))) return undefined;
  const joined = words.find((each) => word.startsWith(each) && known.has(word.slice(each.length)));
  if (joined !== undefined) return { kind: "joined", words: [joined, word.slice(joined.length)] };
  const most = word.length < SHORTEST_WITH_TWO_SLIPS ? 1 : 2;
  const near = words
    .map((each) => ({ each, slips: editDistance(word, each) }))
    .filter(({ slips }) => slips <= most)
    .sort((one, other) => one.slips - other.slips);
  const anyOf = near.filter(({ slips }) => slips === near[0]?.slips).map(({ each }) => each);
  return anyOf.length === 0 ? undefined : { kind: "near", anyOf };
}
