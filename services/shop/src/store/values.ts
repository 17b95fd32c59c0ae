/** What may be looked up in the word index of a kind: all of the words, and one of each list of facets. */
export type Match = {
  readonly words: readonly string[];
  /** One word of each list. */
  readonly anyOfWords?: readonly (readonly string[])[];
  readonly anyOfFacets: readonly (readonly string[])[];
  /** What is looked for only where none of these is found. */
  readonly except?: readonly Match[];
};

/** How many conditions a match has. */
export function partsOf({ words, anyOfWords = [], anyOfFacets }: Match): number {
  return words.length + anyOfWords.length + anyOfFacets.length;
}

/** A value for a query's placeholder; engines write lists and matches each their own way. */
export type Value =
  | string
  | number
  | boolean
  | Buffer
  | null
  | undefined
  | { readonly list: readonly string[] }
  | { readonly match: Match };
