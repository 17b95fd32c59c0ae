import type { Change } from "../../day/day.ts";
import type { Show } from "../show.ts";
import { describeFencePlace } from "./fences.ts";
import { guideTitle } from "./guides.ts";
import { CHANGE_MEANINGS } from "./meanings/changes.ts";

/**
 * What to change over before a set-up, as a sentence. Which bit, and which router or table, are for the reader's list to name.
 * @example
 * describeChange({ code: "height", heightMm: 9, minutes: 2 }, showIn("metric")) // → "Set the height to 9 mm and lock it."
 */
export function describeChange(change: Change, show: Show): string {
  switch (change.code) {
    case "height":
      return `Set the height to ${show.length(change.heightMm)} and lock it.`;
    case "fence":
      return `Set the fence or another guide ${describeFencePlace(change.fenceMm, show)}.`;
    case "guide":
      return `Put up another guide: ${guideTitle(change.guide)}.`;
    case "dial":
      return `Set the speed: ${change.dial}.`;
    case "move":
    case "bit":
    case "test-piece":
      return CHANGE_MEANINGS[change.code];
  }
}
