import type { Match } from "../values.ts";

const WORD = "w";
const FACET = "f";

/** How many conditions the index is asked for by themselves; a statement is prepared for each number of them. */
const MOST_SEPARATE = 4;

/** Of so many conditions, how many stand by themselves; the others are in the last of them. */
export function separateParts(conditions: number): number {
  return Math.min(conditions, MOST_SEPARATE);
}

/** What is looked for as a `tsquery` for each condition that stands by itself: all must hold. */
export function matchParts(match: Match): string[] {
  const conditions = conditionsOf(match);
  const last = separateParts(conditions.length) - 1;
  // An exclusion needs something that is looked for beside it: alone, it would have the whole index read.
  const excluded = exclusionsOf(match);
  return [...conditions.slice(0, last), [...conditions.slice(last), ...excluded].join(" & ")];
}

function wholeOf(match: Match): string {
  return [...conditionsOf(match), ...exclusionsOf(match)].join(" & ");
}

function conditionsOf({ words, anyOfWords = [], anyOfFacets }: Match): string[] {
  return [
    ...words.map((word) => quoted(WORD, word)),
    ...anyOfWords.map((each) => anyOf(WORD, each)),
    ...anyOfFacets.map((each) => anyOf(FACET, each)),
  ];
}

function exclusionsOf({ except = [] }: Match): string[] {
  return except.map((each) => `!(${wholeOf(each)})`);
}

function anyOf(sort: string, terms: readonly string[]): string {
  return `(${terms.map((term) => quoted(sort, term)).join(" | ")})`;
}

function quoted(sort: string, term: string): string {
  return `'${sort}${term.replaceAll(/['\\]/g, "")}'`;
}
