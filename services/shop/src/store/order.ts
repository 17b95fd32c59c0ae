/** What lists of named records may be sorted by. Ids come in order of time, so they stand for when a record was entered. */
export const ORDERS = ["createdAt", "-createdAt", "name", "-name"] as const;

export type Order = (typeof ORDERS)[number];

/** So much of a name orders a list; further letters are decided by time. */
export const ORDERING_LETTERS = 60;

/** Where a page goes on from: after the record with this id and, when names order the list, this start of its folded name. */
export type PageStart = { readonly id: string; readonly name?: string };

export const FIRST_PAGE: PageStart = { id: "" };
