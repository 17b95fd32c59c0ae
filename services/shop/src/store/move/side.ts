import type { ChainHead } from "../head.ts";

/** A table that is copied. */
export type MovedTable = {
  readonly name: string;
  /** The columns that its rows are in order of. */
  readonly key: readonly string[];
  /** A column that the database gives a number to when a row is new. */
  readonly assigned?: string;
};

/** The values of a row, in the order of the columns that were asked for: the same in both engines. */
export type MovedRow = readonly unknown[];

/** Where the rows of a table are read from and written to. Nobody else has the database open meanwhile. */
export type Side = {
  /** The columns that are kept, not computed, sorted by name. */
  readonly columns: (table: string) => Promise<readonly string[]>;
  /** The next rows after a key, in order of it; the first ones without one. */
  readonly rowsAfter: (
    table: MovedTable,
    columns: readonly string[],
    after: MovedRow | undefined,
    most: number,
  ) => Promise<readonly MovedRow[]>;
  /** The key of the last row; undefined when there is none. */
  readonly lastKey: (table: MovedTable) => Promise<MovedRow | undefined>;
  readonly head: () => Promise<ChainHead | undefined>;
  readonly close: () => Promise<void>;
};

/** A database that is being moved into. Until it is finished no service opens it. */
export type Target = Side & {
  /** The head of the history that is being moved into it. */
  readonly movedHead: () => Promise<ChainHead | undefined>;
  /** All of these rows or none. */
  readonly write: (table: MovedTable, columns: readonly string[], rows: readonly MovedRow[]) => Promise<void>;
  /** Lets services open it. */
  readonly finish: () => Promise<void>;
};
