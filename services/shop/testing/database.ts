export type Row = Readonly<Record<string, unknown>>;

export type Column = { readonly name: string; readonly isRequired: boolean };

/** A shop's database in the hands of somebody who needs no service. SQL is what both engines know; values stand at $1, $2, …. */
export type Database = {
  /** Runs one statement with values, or several without. */
  readonly run: (sql: string, values?: readonly unknown[]) => Promise<void>;
  /** JSON comes as text, and true as 1. */
  readonly rows: (sql: string, values?: readonly unknown[]) => Promise<readonly Row[]>;
  readonly tables: () => Promise<readonly string[]>;
  /** The columns of a table that can be written: not what the database computes. */
  readonly columns: (table: string) => Promise<readonly Column[]>;
  readonly drop: (tables: readonly string[]) => Promise<void>;
  /** Does what the triggers of the history forbid. */
  readonly pastTriggers: (act: () => Promise<void>) => Promise<void>;
  /** Copies everything into a new database. Throws when that is there already. */
  readonly copyTo: (database: string) => Promise<void>;
  readonly close: () => Promise<void>;
};
