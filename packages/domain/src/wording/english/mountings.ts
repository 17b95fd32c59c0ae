import type { Mounting } from "../../router/mounting.ts";

const TITLES: Readonly<Record<Mounting, string>> = { table: "in a table", handheld: "handheld" };

/**
 * How a router is held, after its name.
 * @example
 * mountingTitle("table") // → "in a table"
 */
export function mountingTitle(mounting: Mounting): string {
  return TITLES[mounting];
}
