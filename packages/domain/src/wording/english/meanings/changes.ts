import type { ChangeCode } from "../../../day/day.ts";

/** What is changed over between two set-ups of a day. */
export const CHANGE_MEANINGS: Readonly<Record<ChangeCode, string>> = {
  move: "Go to another router or table that stays set up.",
  bit: "Change the bit.",
  dial: "Set the speed.",
  height: "Set the height and lock it.",
  fence: "Set the fence or another guide to its distance.",
  guide: "Put up another guide.",
  "test-piece": "Cut a test piece and measure it.",
};
