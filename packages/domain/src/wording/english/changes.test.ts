import { describe, expect, it } from "vitest";
import type { Change } from "../../day/day.ts";
import { showIn } from "../show.ts";
import { describeChange } from "./changes.ts";

describe("a change between two set-ups", () => {
  it.each<[Change, string]>([
    [
      { code: "move", fromStation: "a", toStation: "b", minutes: 1 },
      "Go to another router or table that stays set up.",
    ],
    [{ code: "bit", bitId: "cove", minutes: 3 }, "Change the bit."],
    [{ code: "dial", dial: "C", minutes: 0.2 }, "Set the speed: C."],
    [{ code: "height", heightMm: 12.7, minutes: 2 }, "Set the height to 1/2 in and lock it."],
    [
      { code: "fence", fenceMm: 6.35, guide: "fence", minutes: 2 },
      "Set the fence or another guide in front of the bit's centre by 1/4 in.",
    ],
    [{ code: "guide", guide: "bearing", minutes: 2 }, "Put up another guide: the bearing."],
    [{ code: "test-piece", minutes: 3 }, "Cut a test piece and measure it."],
  ])("%o says what to do", (change, sentence) => {
    expect(describeChange(change, showIn("imperial"))).toBe(sentence);
  });
});
