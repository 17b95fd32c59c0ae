/** What may be looked up in the word index of a kind: all of the words, and one of each list of facets. */
export type Match = {
  readonly words: readonly string[];
  readonly anyOfFacets: readonly (readonly string[])[];
};

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
