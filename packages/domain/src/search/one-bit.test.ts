import { describe, expect, it } from "vitest";
import { type Form, formOutline, formPilotRadiusMm } from "../bit/form/registry.ts";
import { DomainError } from "../quantity/fault.ts";
import { searchProfile, searchProfileInSteps } from "./search-profile.ts";
import { wantedFrom } from "./wanted-from.ts";
import type { WantedSegment } from "./wanted-path.ts";

const THICK_MM = 19;
const TOLERANCE_MM = 0.1;

type Corner = readonly [x: number, z: number];

function wanted(start: Corner, ...corners: readonly (Corner | WantedSegment)[]) {
  const point = ([xMm, zMm]: Corner) => ({ xMm, zMm });
  const segments = corners.map(
    (corner): WantedSegment => ("kind" in corner ? corner : { kind: "line", ...point(corner) }),
  );
  return wantedFrom({ thicknessMm: THICK_MM, start: point(start), segments });
}

function search(profile: ReturnType<typeof wanted>, form: Form, toleranceMm = TOLERANCE_MM) {
  const bit = { id: form.kind, outline: formOutline(form), pilotRadiusMm: formPilotRadiusMm(form) };
  return searchProfile(profile, [bit], { toleranceMm, setupsMax: 1 });
}

const rabbet = wanted([9, 0], [9, 6], [0, 6]);

describe("settings by hand", () => {
  it("a rabbet 9 wide and 6 deep with a straight bit: flat at 6, standing at 9", () => {
    const { oneSetup } = search(rabbet, { kind: "straight", diameterMm: 20, cuttingLengthMm: 25 });
    // The bit's radius of 10 less what it reaches in is the fence; a tenth lower is still within tolerance.
    expect(oneSetup).toHaveLength(2);
    const [flat, standing] = oneSetup.toSorted((one, other) => one.heightMm - other.heightMm);
    expect(flat).toMatchObject({ presentation: { work: "flat", face: "front" }, greatestLeftMm: 0 });
    expect(flat?.heightMm).toBeCloseTo(6, 9);
    expect(flat?.fenceMm).toBeCloseTo(1, 9);
    expect(flat?.heightsMm.fromMm).toBeCloseTo(5.9, 5);
    expect(flat?.heightsMm.toMm).toBeCloseTo(6, 5);
    expect(standing).toMatchObject({ presentation: { work: "standing", face: "front" } });
    expect(standing?.heightMm).toBeCloseTo(9, 9);
    expect(standing?.fenceMm).toBeCloseTo(4, 9);
  });

  it("a rounding with its own bit: bearing on the edge, the end of the curve at the face", () => {
    const profile = wanted([6, 0], { kind: "arc", xMm: 0, zMm: 6, arcRadiusMm: 6, curve: "round" });
    const { oneSetup } = search(profile, {
      kind: "round-over",
      diameterMm: 24,
      radiusMm: 6,
      pilotHeightMm: 5,
    });
    expect(oneSetup.map(({ presentation: { work, face } }) => `${work} ${face}`).sort()).toEqual([
      "flat front",
      "standing front",
    ]);
    for (const { heightMm, fenceMm, greatestLeftMm } of oneSetup) {
      expect(heightMm).toBeCloseTo(11, 6);
      expect(fenceMm).toBeCloseTo(6, 6);
      expect(greatestLeftMm).toBeCloseTo(0, 6);
    }
  });

  it("a hollow of 6 in a corner with a round nose: its middle in the corner", () => {
    const hollow = wanted([6, 0], { kind: "arc", xMm: 0, zMm: 6, arcRadiusMm: 6, curve: "hollow" });
    const { oneSetup } = search(hollow, { kind: "core-box", diameterMm: 12, cuttingLengthMm: 12 });
    const flat = oneSetup.find(({ presentation }) => presentation.work === "flat");
    expect(flat?.heightMm).toBeCloseTo(6, 6);
    expect(flat?.fenceMm).toBeCloseTo(0, 6);
  });

  it("a nose a tenth smaller than its hollow leaves a tenth", () => {
    const hollow = wanted([6, 0], { kind: "arc", xMm: 0, zMm: 6, arcRadiusMm: 6, curve: "hollow" });
    const { oneSetup } = search(hollow, { kind: "core-box", diameterMm: 11.8, cuttingLengthMm: 12 }, 0.2);
    // Its axis stands at the edge at the most, so that at the foot of the hollow the difference of the radii is left.
    expect(oneSetup[0]?.greatestLeftMm).toBeCloseTo(0.1, 4);
  });

  it("a slot just as wide as its cutter: one height and no other", () => {
    const slot = wanted([0, 6], [8, 6], [8, 12], [0, 12]);
    const form = { kind: "slot-cutter", diameterMm: 40, slotWidthMm: 6, arborLengthMm: 20 } as const;
    const { oneSetup } = search(slot, form);
    // From the front 12 up, from the back 13: the disc is at the bit's tip.
    expect(oneSetup.map(({ heightMm }) => Number(heightMm.toFixed(6))).sort()).toEqual([12, 13]);
    for (const { heightsMm, fenceMm } of oneSetup) {
      expect(heightsMm.toMm - heightsMm.fromMm).toBeLessThan(1e-5);
      expect(fenceMm).toBeCloseTo(12, 9);
    }
  });

  it("a groove in a face is made standing, though its wall doubles back from the edge", () => {
    const groove = wanted([30, 0], [30, 5], [24, 5], [24, 0]);
    const form = { kind: "slot-cutter", diameterMm: 40, slotWidthMm: 6, arborLengthMm: 40 } as const;
    expect(search(groove, form).oneSetup).toMatchObject([
      { presentation: { work: "standing", face: "front" } },
    ]);
  });

  it("a dovetail takes its own flank out of an edge", () => {
    const tan14 = Math.tan((14 * Math.PI) / 180);
    const flank = wanted([3, 0], [3 + 10 * tan14, 10], [0, 10]);
    const { oneSetup } = search(flank, {
      kind: "dovetail",
      diameterMm: 16,
      angleDeg: 14,
      cuttingLengthMm: 12,
    });
    const flat = oneSetup.find(({ presentation }) => presentation.work === "flat");
    expect(flat?.heightMm).toBeCloseTo(10, 6);
    expect(flat?.fenceMm).toBeCloseTo(8 - 3 - 10 * tan14, 6);
  });
});

describe("what was not taken says why", () => {
  const why = (profile: ReturnType<typeof wanted>, form: Form) => {
    const { notTaken, oneSetup } = search(profile, form);
    expect(oneSetup).toEqual([]);
    expect(notTaken).toHaveLength(1);
    return notTaken[0]?.reason;
  };

  it("the nearest first, and only so many if that is asked", () => {
    const forms: Form[] = [
      { kind: "straight", diameterMm: 20, cuttingLengthMm: 4 },
      { kind: "straight", diameterMm: 8, cuttingLengthMm: 25 },
      { kind: "round-over", diameterMm: 24, radiusMm: 6, pilotHeightMm: 5 },
    ];
    const bits = forms.map((form, index) => ({
      id: String(index),
      outline: formOutline(form),
      pilotRadiusMm: formPilotRadiusMm(form),
    }));
    const asked = { toleranceMm: TOLERANCE_MM, setupsMax: 1 } as const;
    const { notTaken } = searchProfile(rabbet, bits, asked);
    expect(notTaken.map(({ reason }) => reason.code)).toEqual(["pilot-in-the-way", "too-small", "too-short"]);
    const first = searchProfile(rabbet, bits, { ...asked, notTakenMost: 1 });
    expect(first.notTaken).toEqual(notTaken.slice(0, 1));
  });

  it("too short", () => {
    // Standing it would have to be 9 long, flat 6; a tenth less is within tolerance.
    const reason = why(rabbet, { kind: "straight", diameterMm: 20, cuttingLengthMm: 4 });
    expect(reason).toMatchObject({ code: "too-short", lengthMm: 4 });
    expect(
      [5.9, 8.9].some((mm) => Math.abs((reason?.code === "too-short" ? reason.neededMm : 0) - mm) < 1e-6),
    ).toBe(true);
  });

  it("out of reach", () => {
    const slot = wanted([0, 8], [8, 8], [8, 12], [0, 12]);
    const form = {
      kind: "t-slot",
      diameterMm: 20,
      headHeightMm: 4,
      neckDiameterMm: 8,
      cuttingLengthMm: 8,
    } as const;
    // The head would have to stand out to the top of the slot, less the tolerance.
    expect(why(slot, form)).toMatchObject({
      code: "out-of-reach",
      reachMm: 8,
      neededMm: expect.closeTo(11.9, 9),
    });
  });

  it("too small", () => {
    const deep = wanted([0, 6], [15, 6], [15, 12], [0, 12]);
    expect(why(deep, { kind: "straight", diameterMm: 20, cuttingLengthMm: 25 })).toMatchObject({
      code: "too-small",
      reachMm: 10,
      neededMm: expect.closeTo(14.9, 9),
    });
  });

  it("the pilot in the way", () => {
    const form = { kind: "rabbet", diameterMm: 22, pilotDiameterMm: 12, cuttingLengthMm: 12 } as const;
    // It reaches (22 − 12)/2 past its pilot; standing 6 are needed, flat 9.
    expect(why(rabbet, form)).toMatchObject({ code: "pilot-in-the-way", radiusMm: 6, reachMm: 5 });
  });

  it("a body in the way", () => {
    const deep = wanted([0, 12], [15, 12], [15, 16], [0, 16]);
    const disc = { kind: "slot-cutter", diameterMm: 40, slotWidthMm: 4, arborLengthMm: 30 } as const;
    expect(search(deep, { ...disc, arborDiameterMm: 8 }).oneSetup).not.toEqual([]);
    // 20 less the arbor's 8 reach 12 in.
    expect(why(deep, { ...disc, arborDiameterMm: 16 })).toMatchObject({
      code: "body-in-the-way",
      radiusMm: 8,
      reachMm: 12,
    });
  });

  it("it gouges wherever it would cut", () => {
    const narrow = wanted([0, 8], [6, 8], [6, 10], [0, 10]);
    expect(why(narrow, { kind: "straight", diameterMm: 20, cuttingLengthMm: 25 })).toEqual({
      code: "gouges-everywhere",
    });
  });

  it("it leaves too much, how much, and where", () => {
    // A bevel of 45° through (6, 0) and (0, 6) leaves half of the square: its middle is 3 from both walls.
    const square = wanted([6, 0], [6, 6], [0, 6]);
    expect(why(square, { kind: "chamfer", diameterMm: 30, angleDeg: 45 })).toMatchObject({
      code: "leaves-too-much",
      leftMm: expect.closeTo(3, 4),
      leftAt: { xMm: expect.closeTo(3, 4), zMm: expect.closeTo(3, 4) },
    });
  });
});

it("in steps the answer is the same, and there are some for every bit", () => {
  const bits = [4, 25].map((cuttingLengthMm) => {
    const outline = formOutline({ kind: "straight", diameterMm: 20, cuttingLengthMm });
    return { id: `${cuttingLengthMm} long`, outline, pilotRadiusMm: undefined };
  });
  const options = { toleranceMm: TOLERANCE_MM, setupsMax: 2 } as const;
  const steps = searchProfileInSteps(rabbet, bits, options);
  let count = 0;
  let step = steps.next();
  for (; step.done !== true; step = steps.next()) count += 1;
  expect(count).toBeGreaterThanOrEqual(bits.length);
  expect(step.value).toEqual(searchProfile(rabbet, bits, options));
});

it("a tolerance that lets the wood stay is refused", () => {
  const faultsOf = () => {
    try {
      search(rabbet, { kind: "straight", diameterMm: 20, cuttingLengthMm: 25 }, 20);
    } catch (error) {
      return error instanceof DomainError ? error.faults : [];
    }
    return [];
  };
  expect(faultsOf()).toMatchObject([{ pointer: "/toleranceMm", code: "out-of-range" }]);
});
