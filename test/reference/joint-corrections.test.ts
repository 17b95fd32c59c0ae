import { type Bit, closeJoint, correctedJoint, type JointKind, solveJoint } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import {
  bitWith,
  COPE,
  DOVETAIL,
  DRAWER_JOINT,
  FINGER_JOINT,
  GROOVE,
  LOCK_MITRE,
  off,
  RABBET,
  STICK,
  TONGUE,
} from "./joint-pairs.ts";

describe("a setting that is off, by hand", () => {
  it("puts the faces of a joint with itself off by twice the height, and the end of a corner by twice the fence", () => {
    const { first, second } = solveJoint("lock-mitre", [LOCK_MITRE, LOCK_MITRE], { thicknessMm: 18 });
    const high = closeJoint("lock-mitre", off(first, 0.3), off(second, 0.3));
    expect(high.facesOffMm).toBeCloseTo(0.6, 9);
    const shallow = closeJoint("lock-mitre", off(first, 0, 0.2), off(second, 0, 0.2));
    expect(shallow.endsOffMm).toBeCloseTo(0.4, 9);
    // The sharp corners are not reached: a face of 0.2 mm is left there, uncut, and a gap no wider.
    expect(shallow.gap.mm).toBeGreaterThan(0.05);
    expect(shallow.gap.mm).toBeLessThan(0.2);
  });

  it("puts the faces of a pair off by the height of one", () => {
    const { first, second } = solveJoint("tongue-and-groove", [GROOVE, TONGUE], { thicknessMm: 19 });
    expect(closeJoint("tongue-and-groove", off(first, 0.3), second).facesOffMm).toBeCloseTo(0.3, 9);
    expect(closeJoint("tongue-and-groove", first, off(second, 0.3)).facesOffMm).toBeCloseTo(-0.3, 9);
  });

  it("gives a dovetail twice the play that its fence moves, and the corners of its groove a gap as wide as that", () => {
    const asked = { thicknessMm: 24, otherThicknessMm: 15, depthMm: 8 };
    const { first, second } = solveJoint("sliding-dovetail", [DOVETAIL, DOVETAIL], asked);
    const loose = closeJoint("sliding-dovetail", first, off(second, 0, -0.1));
    expect(loose.gap.mm).toBeCloseTo(0.1, 3);
    const asGiven = solveJoint("sliding-dovetail", [DOVETAIL, DOVETAIL], { ...asked, clearanceMm: 0.2 });
    expect(asGiven.second.setting.fenceMm).toBeCloseTo(second.setting.fenceMm - 0.1, 9);
    expect(asGiven.findings).toEqual([]);
  });
});

describe("what the test pieces show together", () => {
  const tried: readonly (readonly [string, JointKind, readonly [Bit, Bit], number])[] = [
    ["finger joint", "finger-joint", [FINGER_JOINT, FINGER_JOINT], 22],
    ["drawer joint", "drawer-joint", [DRAWER_JOINT, DRAWER_JOINT], 12],
    ["lock mitre", "lock-mitre", [LOCK_MITRE, LOCK_MITRE], 18],
    ["shiplap", "shiplap", [RABBET, RABBET], 19],
    ["cope and stick", "cope-and-stick", [STICK, COPE], 19],
    ["tongue and groove", "tongue-and-groove", [GROOVE, TONGUE], 19],
  ];

  it.each(tried)("puts the faces of a %s right", (_, kind, bits, thicknessMm) => {
    const { first, second } = solveJoint(kind, bits, { thicknessMm });
    // Set by a scale that reads 0.35 mm too low for one, or for both with the same bit.
    const isOne = bits[0] === bits[1];
    const made = [isOne ? off(first, 0.35) : first, off(second, 0.35)] as const;
    const { facesOffMm } = closeJoint(kind, ...made);
    const corrected = correctedJoint(kind, made, { facesOffMm });
    expect(corrected.closure.facesOffMm).toBeCloseTo(0, 9);
    expect(corrected.second.setting.heightMm).toBeCloseTo(second.setting.heightMm, 9);
    expect(corrected.first.setting.heightMm).toBeCloseTo(first.setting.heightMm, 9);
  });

  it("makes a tail thinner by half on each face", () => {
    const asked = { thicknessMm: 24, otherThicknessMm: 15, depthMm: 8 };
    const { first, second } = solveJoint("sliding-dovetail", [DOVETAIL, DOVETAIL], asked);
    const corrected = correctedJoint("sliding-dovetail", [first, second], { tooThickMm: 0.3 });
    expect(corrected.second.setting.fenceMm).toBeCloseTo(second.setting.fenceMm - 0.15, 9);
    expect(corrected.second.measures.thicknessMm).toBeCloseTo((second.measures.thicknessMm ?? 0) - 0.3, 9);
  });

  it("takes a corner's ends back by both fences", () => {
    const { first, second } = solveJoint("lock-mitre", [LOCK_MITRE, LOCK_MITRE], { thicknessMm: 18 });
    const made = [off(first, 0, 0.25), off(second, 0, 0.25)] as const;
    const { endsOffMm = 0 } = closeJoint("lock-mitre", ...made);
    const { closure, first: again } = correctedJoint("lock-mitre", made, { endsOffMm });
    expect(closure.endsOffMm).toBeCloseTo(0, 9);
    expect(again.setting.fenceMm).toBeCloseTo(first.setting.fenceMm, 9);
  });

  it("shortens a tongue by its fence if no bearing holds it", () => {
    const free = bitWith(TONGUE, { pilot: "none" });
    const { first, second } = solveJoint("tongue-and-groove", [GROOVE, free], { thicknessMm: 19 });
    const corrected = correctedJoint("tongue-and-groove", [first, second], { shouldersOpenMm: 0.2 });
    expect(corrected.second.measures.reachMm).toBeCloseTo(9.33, 9);
  });

  it("refuses what no setting changes, what is not measured, and what is too far off", () => {
    const { first, second } = solveJoint("cope-and-stick", [STICK, COPE], { thicknessMm: 19 });
    const refused = (measured: object) => () => correctedJoint("cope-and-stick", [first, second], measured);
    expect(refused({})).toThrow("nothing-measured");
    expect(refused({ tooThickMm: 0.1, shouldersOpenMm: 0.1 })).toThrow(
      "/tooThickMm: not-settable-here; /shouldersOpenMm: not-settable-here",
    );
    expect(refused({ facesOffMm: 3.5 })).toThrow("/facesOffMm: out-of-range");
  });
});
