import type { Column, SQL, SQLWrapper } from "drizzle-orm";
import type { Kind } from "./kind.ts";

/** What engines write differently. */
export type Dialect = {
  /** Whether a value is in the list that a placeholder is given. */
  readonly isIn: (value: SQLWrapper, list: SQLWrapper) => SQL;
  /** The values of a list, as a subquery's rows. */
  readonly valuesOf: (list: SQLWrapper) => SQL;
  /** Whether a list that is kept in a column has a value. */
  readonly holds: (column: SQLWrapper, value: SQLWrapper) => SQL;
  /** Whether a text has another in it, as texts are compared (`folded`). The other one comes folded. */
  readonly contains: (column: SQLWrapper, part: SQLWrapper) => SQL;
  /** The first letters of a text as texts are compared; of none, the empty text. */
  readonly orderedBy: (column: SQLWrapper, letters: number) => SQL;
  /** A table read by an index that the planner would not choose without statistics. */
  readonly byIndex: (table: string, index: string) => SQL;
  /** A column that must not make an index look better than the one that narrows most. */
  readonly unindexed: (column: Column) => SQL;
  /** The rows of a kind that its words and facets find, in order of their number. */
  readonly found: (kind: Kind, search: Search) => SQL;
};

/** What is looked for by words and facets. */
export type Search = {
  readonly columns: SQL;
  readonly match: SQLWrapper;
  /** How many conditions the match has. */
  readonly parts: number;
  /** What must be so as well. */
  readonly conditions: readonly SQL[];
  readonly afterNumber: SQLWrapper;
  readonly most: SQLWrapper;
};
