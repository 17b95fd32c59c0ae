import type { Column } from "./columns.ts";
import { MOST_EMPTY_KIB, MOST_EMPTY_LINES } from "./lines.ts";

/** What is wrong with a row. */
export type RowFault = {
  /** The column of a CSV, or the JSON Pointer in an NDJSON line; absent if it is the whole row. */
  readonly column?: string;
  readonly message: string;
  readonly accepted: string;
  /** What stands there. */
  readonly given?: string;
  /** The name that comes nearest to it. */
  readonly nearest?: string;
};

/** How a quantity was read. */
export type Reading = {
  readonly column: string;
  readonly given: string;
  readonly read: string;
  /** What else it might have been meant as. */
  readonly note?: string;
};

/** What a row says of a bit: all of it, or what stands in its columns. An undefined value says that there is none. */
export type RowContent =
  | { readonly kind: "whole"; readonly bit: object }
  | {
      readonly kind: "columns";
      readonly values: ReadonlyMap<Column, unknown>;
      /** The texts of its cells. */
      readonly given: ReadonlyMap<string, string>;
    };

/** One row of a file, whatever the file's format. */
export type Row =
  | {
      readonly kind: "row";
      readonly line: number;
      readonly id: string | undefined;
      readonly content: RowContent;
      /** What is wrong with single cells: the others are looked at all the same. */
      readonly faults: readonly RowFault[];
      readonly readings: readonly Reading[];
    }
  /** A row that cannot be read; the next one can. */
  | { readonly kind: "unreadable"; readonly line: number; readonly faults: readonly RowFault[] }
  /** From here on the file cannot be read. */
  | { readonly kind: "broken"; readonly line: number; readonly faults: readonly RowFault[] };

/** Reads the rows of a file, one at a time. */
export type ReadRows = (source: AsyncIterable<Buffer>) => AsyncIterable<Row>;

const ID = /^bit_[0-9a-f]{32}$/;

/** What is wrong with an id, if anything. */
export function idFaults(id: unknown, column: string): RowFault[] {
  if (id === undefined || (typeof id === "string" && ID.test(id))) return [];
  const accepted = 'an id such as "bit_" and 32 hexadecimal digits; leave it out for a new bit';
  return [{ column, message: "This is not the id of a bit.", accepted }];
}

export const NOT_UTF8: RowFault = {
  message: "These bytes are not UTF-8.",
  accepted: "text in UTF-8; save the file in that encoding",
};

export const TOO_MANY_EMPTY: RowFault = {
  message: "There are too many empty rows. From here on nothing was read.",
  accepted: `at most ${MOST_EMPTY_LINES} empty rows, of ${MOST_EMPTY_KIB} KiB in all; remove those at the end`,
};

export const TOO_LONG: RowFault = {
  message: "This row is too long.",
  accepted: "a row of at most 64 KiB",
};
