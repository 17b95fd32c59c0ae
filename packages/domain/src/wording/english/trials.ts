import type { NextTrial } from "../../plan/next-trial.ts";
import type { Show } from "../show.ts";
import { limitTitle } from "./limits.ts";

/**
 * What to do next in a guided speed trial, as sentences.
 * @example
 * const next = { kind: "not-possible", reason: "table-only" };
 * describeNextTrial(next, showIn("metric")) // → "No trial in the hand: this bit is for a router in a table only."
 */
export function describeNextTrial(next: NextTrial, show: Show): string {
  switch (next.kind) {
    case "try":
      return tryOut(next, show);
    case "done":
      return `${ended(next, show)} ${
        next.fastestFreeRpm === undefined
          ? "It has not run free in this router at any speed allowed: do not cut with it here."
          : `The fastest it ran free here is ${show.rotation(next.fastestFreeRpm)}.`
      }`;
    case "not-possible":
      return notPossible(next, show);
  }
}

function tryOut(
  { setting: { mark, rpm }, number, ofAtMost, under }: Extract<NextTrial, { kind: "try" }>,
  show: Show,
): string {
  const { ceilingRpm, bindingLimit } = under;
  const dial = mark === undefined ? "This router has no dial to set" : `Set the dial to ${show.mark(mark)}`;
  return (
    `Trial ${number} of at most ${ofAtMost}: unplug the router, seat the bit and tighten the collet. ${dial}: about ${show.rotation(rpm)}. ` +
    "Guard on, no wood near, eyes and ears covered, nobody in line with the bit. Run it for a few seconds; at the first shake or ring, switch off. " +
    `No trial goes over ${show.rotation(ceilingRpm)}, ${limitTitle(bindingLimit)}.`
  );
}

function ended({ reason, under }: Extract<NextTrial, { kind: "done" }>, show: Show): string {
  return reason === "shook"
    ? "No faster mark is tried: the bit shook within one step of it, here or in another router. Look at the bit, the collet and the spindle."
    : `No faster mark is tried: the next would pass ${show.rotation(under.ceilingRpm)}, ${limitTitle(under.bindingLimit)}, or there is none.`;
}

function notPossible(next: Extract<NextTrial, { kind: "not-possible" }>, show: Show): string {
  switch (next.reason) {
    case "no-collet-fits":
      return "No trial: this router has no collet fit for use that is made for the shank.";
    case "table-only":
      return "No trial in the hand: this bit is for a router in a table only.";
    case "router-too-fast":
      return (
        `No trial: the slowest this router runs is ${show.rotation(next.slowestRpm)}, which with its uncertainty is over ` +
        `${next.breaks.map(limitTitle).join(" and ")}, ${show.rotation(next.limitRpm)}. Use a slower router.`
      );
  }
}
