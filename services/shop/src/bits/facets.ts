import type { BitSize, SizeRole } from "@rimwise/domain";

/** A word is found by its beginning from this many letters on. */
const SHORTEST_BEGINNING = 3;

/** Letters of a word beyond these are ignored. */
const LONGEST_BEGINNING = 20;

/** Sizes are distinguished to a tenth of a millimetre. */
const STEPS_PER_MM = 10;

/** Any of a bit's sizes, whatever it measures. */
const ANY_SIZE: SizeRole = "any";

/** Words, as `wordsIn` gives them, with all their beginnings, so that an unfinished one is looked up like a whole one. */
export function wordFacets(words: readonly string[]): string {
  const facets = new Set<string>();
  for (const word of words) addBeginnings(facets, word.slice(0, LONGEST_BEGINNING));
  return [...facets].join(" ");
}

/** A word of a query as it stands in the index. */
export function wordFacet(word: string): string {
  return plain(word).slice(0, LONGEST_BEGINNING);
}

/** One property of a bit as one word: `facet("state", "in-rack")`. */
export function facet(name: string, value: string): string {
  return `${name}${plain(value)}`;
}

/** A bit's sizes as words, each under what it measures and under any. */
export function sizeFacets(sizes: readonly BitSize[]): string[] {
  return sizes.flatMap(({ role, mm }) => [sizeFacet(role, stepOf(mm)), sizeFacet(ANY_SIZE, stepOf(mm))]);
}

/** Every word that a size within a tolerance may stand in the index as. */
export function sizeFacetsWithin(role: SizeRole, mm: number, toleranceMm: number): string[] {
  const first = Math.max(0, Math.ceil((mm - toleranceMm) * STEPS_PER_MM - 1e-6));
  const last = Math.max(stepOf(mm), Math.floor((mm + toleranceMm) * STEPS_PER_MM + 1e-6));
  return Array.from({ length: last - first + 1 }, (_, index) => sizeFacet(role, first + index));
}

function addBeginnings(facets: Set<string>, word: string): void {
  facets.add(word);
  for (let length = word.length - 1; length >= SHORTEST_BEGINNING; length -= 1)
    facets.add(word.slice(0, length));
}

function sizeFacet(role: SizeRole, step: number): string {
  return `${role}${step}`;
}

function stepOf(mm: number): number {
  return Math.round(mm * STEPS_PER_MM);
}

/** Letters and digits only: what the index takes for one word. */
function plain(text: string): string {
  return text.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, "");
}
