import type { Scene } from "../scene/scene.ts";

/** Pages to print, each a scene of exactly the paper's size. */
export type Sheet = { readonly title: string; readonly pages: readonly Scene[] };

/**
 * What the groups of a page are to a reader of the document, by the name of the group: what is set in it is read in the order of the items.
 * `running` is what each page repeats, which is passed over when it is read aloud.
 */
export const SHEET_PARTS = [
  "title",
  "heading",
  "paragraph",
  "list",
  "list-item",
  "picture",
  "table",
  "row",
  "header-cell",
  "cell",
  "label",
  "running",
] as const;

export type SheetPart = (typeof SHEET_PARTS)[number];
