import { plainCharacters } from "../quantity/parse.ts";

/** Words that say nothing of which bit is meant. */
const STOP_WORDS: ReadonlySet<string> = new Set([
  "a",
  "an",
  "and",
  "bit",
  "cutter",
  "for",
  "in",
  "of",
  "or",
  "router",
  "the",
  "with",
  "x",
]);

/** Letters that do not fall apart into a plain letter and a mark. */
const PLAIN_LETTERS: Readonly<Record<string, string>> = {
  æ: "ae",
  đ: "d",
  ł: "l",
  ø: "o",
  œ: "oe",
  ß: "ss",
};

/** The shortest word whose final "s" is taken for a plural. */
const SHORTEST_PLURAL = 4;

/**
 * The words of a text as bits are looked up by: lower-case, without accents, in the singular, each once, without those that say
 * nothing ("bit", "router", "the"). Letters of other scripts stay.
 * @example
 * wordsIn("The Round-over bits") // → ["round", "over"]
 */
export function wordsIn(text: string): string[] {
  const words = (folded(text).match(/[\p{L}\p{N}]+/gu) ?? []).map(singular);
  return [...new Set(words)].filter((word) => !STOP_WORDS.has(word));
}

/** The text in lower case and without accents, fractions as "1/2". */
export function folded(text: string): string {
  return plainCharacters(text)
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[æđłøœß]/g, (letter) => PLAIN_LETTERS[letter] ?? letter);
}

function singular(word: string): string {
  return word.length >= SHORTEST_PLURAL && /[^s]s$/.test(word) ? word.slice(0, -1) : word;
}
