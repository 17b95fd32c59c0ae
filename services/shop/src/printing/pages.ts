import type { Scene } from "@rimwise/drawing";

/** Pages to print. A sheet is that; a thousand labels are made while they are printed, and never there at once. */
export type Pages = { readonly title: string; readonly pages: Iterable<Scene> | AsyncIterable<Scene> };
