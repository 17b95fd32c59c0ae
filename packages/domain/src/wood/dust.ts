import type { Wood } from "./wood.ts";

/** `irritant`: of a kind known to irritate or sensitise, and a hardwood; `hardwood`: a recognised carcinogen; `board`: fine, with its glue. */
export type Dust = "irritant" | "hardwood" | "board" | "irritant-softwood";

/** Kinds whose dust is known to irritate or sensitise, beside the imported ones. Source: common practice; the cedars and the locust from memory. */
const IRRITANT: ReadonlySet<string> = new Set([
  "red-oak",
  "white-oak",
  "american-beech",
  "black-walnut",
  "butternut",
  "black-locust",
]);

const IRRITANT_SOFTWOOD: ReadonlySet<string> = new Set([
  "western-redcedar",
  "eastern-redcedar",
  "incense-cedar",
  "redwood",
]);

/**
 * What the dust of a wood or board is known for; undefined for a softwood or a plastic of which nothing special is. Source: common practice.
 * @example
 * dustOf(woodById("black-walnut")) // → "irritant"
 */
export function dustOf(wood: Wood): Dust | undefined {
  if (wood.kind === "sheet") return "board";
  if (wood.kind === "plastic") return undefined;
  // Many imported species sensitise; which do is not told apart here, so all are taken to.
  if (wood.group === "imported" || IRRITANT.has(wood.id)) return "irritant";
  if (IRRITANT_SOFTWOOD.has(wood.id)) return "irritant-softwood";
  return wood.group === "domestic-hardwood" ? "hardwood" : undefined;
}
