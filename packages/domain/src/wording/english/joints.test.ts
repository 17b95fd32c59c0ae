import { describe, expect, it } from "vitest";
import type { JointFinding } from "../../joint/finding.ts";
import { showIn } from "../show.ts";
import { describeHalfMeasures, describeJointFinding } from "./joints.ts";
import { JOINT_FINDING_MEANINGS } from "./meanings/joints.ts";

const care = "care" as const;
const note = "note" as const;

const FINDINGS: readonly (readonly [JointFinding, RegExp])[] = [
  [
    { code: "goes-in-too-tight", severity: care, byMm: 0.2, shimMm: 0.2 },
    /0\.2 mm too thick.*0\.2 mm of shims/,
  ],
  [{ code: "goes-in-too-tight", severity: care, byMm: 0.2, shimMm: undefined }, /by the test piece/],
  [
    { code: "goes-in-too-loose", severity: care, byMm: 0.3, shimMm: 0.3 },
    /0\.3 mm too thin.*0\.3 mm of shims/,
  ],
  [{ code: "goes-in-too-loose", severity: care, byMm: 0.3, shimMm: undefined }, /by the test piece/],
  [
    { code: "stays-open", severity: care, gapMm: 0.4, fromEdgeMm: 1, fromFaceMm: 8 },
    /apart by 0\.4 mm, measured at 8 mm from the face/,
  ],
  [{ code: "faces-not-flush", severity: care, facesOffMm: 0.4 }, /off by 0\.4 mm.*too high/],
  [{ code: "ends-not-flush", severity: care, endsOffMm: -0.4 }, /off by 0\.4 mm.*stops short/],
  [{ code: "back-not-reached", severity: care, shortMm: 2 }, /last 2 mm/],
  [
    { code: "sharpened-apart", severity: care, gapMm: 0.1, overlapMm: 1e-9, differ: ["depth", "radius"] },
    /: a gap of 0\.1 mm\. They differ in the depth of the groove and the length of the tongue, and in the radius\./,
  ],
  [{ code: "pair-matches", severity: note, kind: "cope-and-stick" }, /fit each other/],
  [{ code: "not-a-pair", severity: note }, /no joint/],
];

describe("a finding of a joint", () => {
  it("is tried here, whichever it is", () => {
    expect(new Set(FINDINGS.map(([{ code }]) => code))).toEqual(new Set(Object.keys(JOINT_FINDING_MEANINGS)));
  });

  it.each(FINDINGS)("%o says what is wrong and what to do", (finding, words) => {
    const said = describeJointFinding(finding, showIn("metric"));
    expect(said).toMatch(words);
    expect(said).toMatch(/^[A-Z].*\.$/);
    expect(said).not.toMatch(/undefined|NaN| {2}|\.\./);
  });
});

it("what to measure is a sentence each, and none for what the one bit decides", () => {
  const measures = { fromFaceMm: 8, reachMm: 9.5, thicknessMm: undefined };
  expect(describeHalfMeasures(measures, showIn("metric"))).toHaveLength(2);
  expect(describeHalfMeasures({ ...measures, thicknessMm: 6.4 }, showIn("metric"))[2]).toMatch(/6\.4 mm\.$/);
});
