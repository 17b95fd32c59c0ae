import { bitSolid, type Form } from "@rimwise/domain";
import { describe, expect, it } from "vitest";

// Mass, centre of mass and inertia against solids of revolution in closed form (standard; handbooks of mechanics print them).
// Bits no thicker than their shank are solid metal; of others the ring outside the shank is metal by the form's share.

/** Steel, g/mm³: 7 850 kg/m³, references §3. */
const DENSITY = 0.00785;
/** Length of shank that is counted: 1-1/2 in. Common practice. */
const SHANK_LENGTH = 38.1;

type Solid = { volume: number; centre: number; polar: number };

const bit = (form: Form, shankDiameterMm: number) => ({ form, shankDiameterMm, wings: 2 });

/** A cylinder from one distance to another; `polar` is ½·∫r⁴·π dt. */
function cylinder(radius: number, from: number, to: number): Solid {
  const volume = Math.PI * radius ** 2 * (to - from);
  return { volume, centre: (from + to) / 2, polar: (volume * radius ** 2) / 2 };
}

/** A cone on its point. */
function cone(radius: number, height: number): Solid {
  const volume = (Math.PI * radius ** 2 * height) / 3;
  return { volume, centre: (3 / 4) * height, polar: (3 / 10) * volume * radius ** 2 };
}

/** A hemisphere that stands on its pole. */
function hemisphere(radius: number): Solid {
  const volume = (2 / 3) * Math.PI * radius ** 3;
  return { volume, centre: (5 / 8) * radius, polar: (2 / 5) * volume * radius ** 2 };
}

function moved(solid: Solid, by: number): Solid {
  return { ...solid, centre: solid.centre + by };
}

function scaled({ volume, centre, polar }: Solid, share: number): Solid {
  return { volume: share * volume, centre, polar: share * polar };
}

function together(...solids: Solid[]): Solid {
  const volume = solids.reduce((sum, each) => sum + each.volume, 0);
  return {
    volume,
    centre: solids.reduce((sum, each) => sum + each.volume * each.centre, 0) / volume,
    polar: solids.reduce((sum, each) => sum + each.polar, 0),
  };
}

/** Pappus: volume of a plane area turned about the axis. */
const pappus = (area: number, centroidRadius: number) => 2 * Math.PI * centroidRadius * area;

describe("mass, centre of mass and inertia in closed form", () => {
  const slope = Math.tan((14 * Math.PI) / 180);
  const dovetailTip = 6 / slope;
  it.each<[string, Form, number, Solid]>([
    [
      "straight, as thick as its shank: one cylinder",
      { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
      12.7,
      cylinder(6.35, 0, 25.4 + SHANK_LENGTH),
    ],
    [
      "core-box, as thick as its shank: a hemisphere and a cylinder",
      { kind: "core-box", diameterMm: 12, cuttingLengthMm: 20 },
      12,
      together(hemisphere(6), cylinder(6, 6, 20 + SHANK_LENGTH)),
    ],
    [
      "v-groove thinner than its shank: a cone on its point",
      { kind: "v-groove", diameterMm: 12, angleDeg: 60 },
      12,
      together(cone(6, 6 * Math.sqrt(3)), cylinder(6, 6 * Math.sqrt(3), 6 * Math.sqrt(3) + SHANK_LENGTH)),
    ],
    [
      "v-groove wider than its shank: half of the ring outside it",
      { kind: "v-groove", diameterMm: 40, angleDeg: 90 },
      12,
      together(
        scaled(cone(20, 20), 0.5),
        scaled(cone(6, 6), 0.5),
        scaled(cylinder(6, 6, 20), 0.5),
        cylinder(6, 20, 20 + SHANK_LENGTH),
      ),
    ],
    [
      "dovetail: a cone less its point, upside down",
      { kind: "dovetail", diameterMm: 12, angleDeg: 14, cuttingLengthMm: 10 },
      12,
      together(
        // The whole cone points at the shank; what is beyond 10 mm is cut off.
        { ...cone(6, dovetailTip), centre: dovetailTip / 4 },
        scaled({ ...cone(6 - 10 * slope, dovetailTip - 10), centre: 10 + (dovetailTip - 10) / 4 }, -1),
        cylinder(6, 10, 10 + SHANK_LENGTH),
      ),
    ],
    [
      "slot cutter: its bearing is solid, as is the hub inside the disc, and 0.8 of the ring",
      { kind: "slot-cutter", diameterMm: 48, slotWidthMm: 6, pilotDiameterMm: 22, pilotHeightMm: 5 },
      12,
      together(
        cylinder(11, 0, 5),
        scaled(cylinder(24, 5, 11), 0.8),
        scaled(cylinder(11, 5, 11), 0.2),
        cylinder(6, 11, 11 + SHANK_LENGTH),
      ),
    ],
    [
      "flush-trim: the bearing is solid, the ring between the edges is not",
      { kind: "flush-trim", diameterMm: 28, cuttingLengthMm: 30, bearing: "tip", pilotHeightMm: 6 },
      12,
      together(
        cylinder(14, 0, 6),
        scaled(cylinder(14, 6, 36), 0.45),
        scaled(cylinder(6, 6, 36), 0.55),
        cylinder(6, 36, 36 + SHANK_LENGTH),
      ),
    ],
    [
      "custom, a ball of 12 on a stem of 8: a hemisphere, a zone and a cylinder",
      {
        kind: "custom",
        diameterMm: 12,
        startRadiusMm: 0,
        segments: [
          { kind: "arc", toMm: 12, radiusMm: 0, arcRadiusMm: 6, bulge: "outward" },
          { kind: "line", toMm: 12, radiusMm: 4 },
          { kind: "line", toMm: 22, radiusMm: 4 },
        ],
      },
      12.7,
      together(
        hemisphere(6),
        { ...hemisphere(6), centre: 12 - (5 / 8) * 6 },
        cylinder(4, 12, 22),
        moved(cylinder(6.35, 0, SHANK_LENGTH), 22),
      ),
    ],
  ])("%s", (_, form, shankDiameterMm, want) => {
    const found = bitSolid(bit(form, shankDiameterMm));
    expect(found.estimatedMassG / (DENSITY * want.volume)).toBeCloseTo(1, 10);
    expect(found.centreOfMassMm).toBeCloseTo(want.centre, 8);
    expect(found.polarInertiaKgM2 / (DENSITY * want.polar * 1e-9)).toBeCloseTo(1, 10);
  });
});

describe("volumes by Pappus's theorem", () => {
  // A quarter circle has its centroid 4R/3π from both its straight sides, a half circle from its diameter.
  const centroid = (radius: number) => (4 * radius) / (3 * Math.PI);

  it.each<[string, Form, number, number]>([
    [
      "bullnose: a cylinder less a half circle turned about the axis",
      { kind: "bullnose", diameterMm: 12.7, radiusMm: 4 },
      12.7,
      Math.PI * 6.35 ** 2 * 8 - pappus((Math.PI * 16) / 2, 6.35 - centroid(4)),
    ],
    [
      "round-over, no wider than its shank: a pilot, and a cylinder less a quarter circle turned about the axis",
      { kind: "round-over", diameterMm: 12.6, radiusMm: 4, pilotDiameterMm: 4.6, pilotHeightMm: 5 },
      12.7,
      Math.PI * 2.3 ** 2 * 5 + Math.PI * 6.3 ** 2 * 4 - pappus((Math.PI * 16) / 4, 6.3 - centroid(4)),
    ],
    [
      "cove, no wider than its shank: a pilot, a core, and a quarter circle turned about the axis",
      { kind: "cove", diameterMm: 12.6, radiusMm: 4, pilotDiameterMm: 4.6, pilotHeightMm: 5 },
      12.7,
      Math.PI * 2.3 ** 2 * 5 + Math.PI * 2.3 ** 2 * 4 + pappus((Math.PI * 16) / 4, 2.3 + centroid(4)),
    ],
  ])("%s", (_, form, shankDiameterMm, headVolume) => {
    const shank = Math.PI * (shankDiameterMm / 2) ** 2 * SHANK_LENGTH;
    const found = bitSolid(bit(form, shankDiameterMm));
    expect(found.estimatedMassG / (DENSITY * (headVolume + shank))).toBeCloseTo(1, 10);
    expect(found.headMassG / (DENSITY * headVolume)).toBeCloseTo(1, 10);
  });
});
