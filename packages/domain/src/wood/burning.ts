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

/**
 * Whether a wood is known to burn where a bit rests or turns too fast. Source: common practice.
 * @example
 * burnsEasily(woodById("black-cherry")) // → true
 */
export function burnsEasily({ id }: Wood): boolean {
  return BURNING.has(id);
}
