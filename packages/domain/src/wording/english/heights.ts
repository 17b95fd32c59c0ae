import type { Mounting } from "../../router/mounting.ts";
import type { Show } from "../show.ts";

/** How far a bit stands out, and how much of that is its cutter. */
export type StandingOut = {
  readonly heightMm: number;
  readonly cutterMm?: number;
  readonly mounting: Mounting;
};

/** How far out a bit is set, to follow "set the bit": a height is measured at the cutter, never at a bearing on the tip. */
export function describeHeight({ heightMm, cutterMm = heightMm, mounting }: StandingOut, show: Show): string {
  const place = mounting === "table" ? "above the table" : "below the base";
  return cutterMm === heightMm
    ? `${show.length(heightMm)} ${place}`
    : `so that ${show.length(cutterMm)} of its cutter stands ${place}`;
}
