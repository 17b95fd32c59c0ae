import type { Wood } from "./wood.ts";

/** Kinds that show every scorch mark: dense, light and full of resin or sugar. Source: common practice; the birches from memory. */
const BURNING: ReadonlySet<string> = new Set([
  "black-cherry",
  "sugar-maple",
  "red-maple",
  "silver-maple",
  "bigleaf-maple",
  "american-beech",
  "paper-birch",
  "yellow-birch",
]);

/** What heat of a fast edge does to a material before anything else: `melts`, as plastics do, or `burns`. */
export type Heat = "melts" | "burns";

/**
 * What a material suffers from a bit that turns fast; undefined if nothing special. Source: common practice.
 * @example
 * heatOf(woodById("black-cherry")) // → "burns"
 */
export function heatOf(wood: Wood): Heat | undefined {
  if (wood.melts) return "melts";
  return BURNING.has(wood.id) ? "burns" : undefined;
}
