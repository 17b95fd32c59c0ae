import { type BitSize, type SizeRole, wordsIn } from "@rimwise/domain";

/** A word is found by its beginning from this many letters on. */
const SHORTEST_BEGINNING = 3;

/** Letters of a word beyond these are not told apart. */
const LONGEST_BEGINNING = 20;

/** Sizes are told apart to a tenth of a millimetre. */
const STEPS_PER_MM = 10;

/** Any of a bit's sizes, whatever it measures. */
const ANY_SIZE: SizeRole = "any";

/** The words of a text with all their beginnings, so that an unfinished word is looked up like a whole one. */
export function wordFacets(text: string): string {
  return [...new Set(wordsIn(text).flatMap(beginnings))].join(" ");
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

function beginnings(word: string): string[] {
  const letters = wordFacet(word);
  const count = Math.max(1, letters.length - SHORTEST_BEGINNING + 1);
  return Array.from({ length: count }, (_, index) => letters.slice(0, letters.length - index));
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
