import type { Show } from "../show.ts";

/** Where a fence stands, to follow "set the fence": the length comes last, or inches would run into the word after them. */
export function describeFencePlace(fenceMm: number, show: Show): string {
  if (fenceMm === 0) return "in line with the bit's centre";
  return `${fenceMm < 0 ? "behind" : "in front of"} the bit's centre by ${show.length(Math.abs(fenceMm))}`;
}
