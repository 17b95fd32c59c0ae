import { describe, expect, it } from "vitest";
import type { NotTakenReason } from "../../search/not-taken.ts";
import { showIn } from "../show.ts";
import { NOT_TAKEN_MEANINGS } from "./meanings/searches.ts";
import { describeNotTaken } from "./searches.ts";

const LENGTHS = { reachMm: 5, neededMm: 8.9 };

/** One of each, with the words that must be in its sentence. */
const REASONS: Readonly<Record<NotTakenReason["code"], readonly [NotTakenReason, readonly string[]]>> = {
  "too-short": [{ code: "too-short", lengthMm: 4, neededMm: 8.9 }, ["4 mm", "8.9 mm"]],
  "out-of-reach": [{ code: "out-of-reach", ...LENGTHS }, ["5 mm", "8.9 mm"]],
  "too-small": [{ code: "too-small", ...LENGTHS }, ["5 mm", "8.9 mm"]],
  "pilot-in-the-way": [{ code: "pilot-in-the-way", radiusMm: 6, ...LENGTHS }, ["12 mm", "5 mm", "8.9 mm"]],
  "body-in-the-way": [{ code: "body-in-the-way", radiusMm: 4, ...LENGTHS }, ["8 mm", "5 mm", "8.9 mm"]],
  "gouges-everywhere": [{ code: "gouges-everywhere" }, ["what must stay"]],
  "leaves-too-much": [
    { code: "leaves-too-much", heightMm: 12, leftMm: 3, leftAt: { xMm: 2, zMm: 7 } },
    ["12 mm", "3 mm", "2 mm", "7 mm"],
  ],
  dominated: [{ code: "dominated", byBitId: "b" }, ["Another bit"]],
};

describe("why a bit was not taken", () => {
  it.each(Object.entries(REASONS))("%s: a sentence with every value in place", (_, [reason, parts]) => {
    const notTaken = { bitId: "a", presentation: { work: "flat", face: "front" }, reason } as const;
    for (const part of parts) expect(describeNotTaken(notTaken, showIn("metric"))).toContain(part);
    for (const units of ["metric", "imperial", "both"] as const) {
      const sentence = describeNotTaken(notTaken, showIn(units));
      expect(sentence).not.toMatch(/NaN|undefined|\[object/);
      expect(sentence).toMatch(/^[A-Z].*\.$/);
    }
  });

  it("each has a meaning", () => {
    expect(Object.keys(NOT_TAKEN_MEANINGS).sort()).toEqual(Object.keys(REASONS).sort());
  });
});
