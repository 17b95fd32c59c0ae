import { expect, it } from "vitest";
import { happeningOf } from "./happening.ts";

it.each([
  ["bit.sharpened", "The bit was sharpened."],
  ["speed-trial.created", "A speed trial was recorded."],
  ["speed-trial.set-aside", "A speed trial was set aside."],
  ["shop-policy.changed", "The shop's policy was changed."],
])("%s is described as: %s", (event, sentence) => expect(happeningOf(event)).toBe(sentence));
