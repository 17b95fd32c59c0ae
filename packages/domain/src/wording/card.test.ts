import { describe, expect, it } from "vitest";
import { cardText } from "./card.ts";

describe("a card of text", () => {
  const lines = (title: string, ...said: string[]) =>
    cardText({
      title,
      sections: [
        { label: "mind", lines: said },
        { label: "nothing", lines: [] },
      ],
    }).split("\n");

  it("has its title, each label once, and what goes on indented", () => {
    const long =
      "Hold the work down and to the fence with feather boards, before and after the bit, not beside it.";
    expect(lines("Door panels", "Unplug the router.", long)).toEqual([
      `┌${"─".repeat(96)}`,
      "│ Door panels",
      `├${"─".repeat(96)}`,
      "│ mind         Unplug the router.",
      "│              Hold the work down and to the fence with feather boards, before and after the",
      "│                bit, not beside it.",
      `└${"─".repeat(96)}`,
    ]);
  });

  it("begins a line where the writer did, and keeps what steers a terminal or turns its text out of it", () => {
    expect(lines("a\u001B[2J\u202Eb", "one\ntwo\tthree").slice(1, 5)).toEqual([
      "│ a[2Jb",
      `├${"─".repeat(96)}`,
      "│ mind         one",
      "│              two three",
    ]);
  });

  it("loses nothing of ten thousand signs", () => {
    const words = Array.from({ length: 2000 }, (_, index) => `w${index}`).join(" ");
    const said = lines("x", words)
      .slice(3, -1)
      .map((line) => line.replace(/^│ (?:mind)? */, ""))
      .join(" ");
    expect(said).toBe(words);
  });
});
