import { G_PER_KG, MM_PER_M } from "../quantity/units.ts";
import type { Bit } from "./bit.ts";
import { formOutline, formPilotRadiusMm, formWingFillRatio } from "./form/registry.ts";
import { moments, type Stretch, stretchesAbove } from "./moments.ts";
import { type Outline, outlineLengthMm, type Segment, segmentSpanMm } from "./outline.ts";

/** Steel of the body, g/mm³. Source: 7 850 kg/m³, the handbook example in references §3 (common practice). */
export const STEEL_DENSITY_G_PER_MM3 = 0.00785;

/** Shank length assumed for the mass estimate: 1-1/2 in. Source: common practice. */
export const ASSUMED_SHANK_LENGTH_MM = 38.1;

/** What the bit weighs and how the mass lies about its axis. */
export type BitSolid = {
  readonly outline: Outline;
  /** Greatest radius of the outline: the rim. */
  readonly rimRadiusMm: number;
  readonly massG: number;
  readonly massSource: "weighed" | "estimated";
  /** What the outline gives, whether or not the bit was weighed. */
  readonly estimatedMassG: number;
  /** Distance of the centre of mass of the whole bit from the tip. */
  readonly centreOfMassMm: number;
  /** Mass of the head, all of the bit in front of the shank, and its centre of mass from the tip. */
  readonly headMassG: number;
  readonly headCentreMm: number;
  /** Moment of inertia about the axis: of the whole bit, and of its head. */
  readonly polarInertiaKgM2: number;
  readonly headInertiaKgM2: number;
};

type Sums = { volumeMm3: number; firstMm4: number; polarMm5: number };

/**
 * The bit as a solid of revolution: a hub as thick as its shank or pilot is full metal, as are bearings and arbors; the
 * ring outside the hub is metal by the form's wing fill. m = ρ·π·∫r²dt, I = ½·ρ·π·∫r⁴dt (solid of revolution, standard). A weighed
 * mass wins over the estimate; the outline then only shapes it, so inertia scales with the mass.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * bitSolid({ ...bit, massG: 58 }) // → { rimRadiusMm: 6.35, massG: 58, massSource: "weighed" }
 */
export function bitSolid(bit: Bit): BitSolid {
  const outline = formOutline(bit.form);
  const pilotRadiusMm = formPilotRadiusMm(bit.form) ?? 0;
  // A bearing as wide as the edges says nothing of what is between them.
  const bodyRadiusMm = pilotRadiusMm < rimRadiusMm(outline) ? pilotRadiusMm : 0;
  const hubRadiusMm = Math.max(bit.shankDiameterMm / 2, bodyRadiusMm);
  const sums = headSums(outline, hubRadiusMm, formWingFillRatio(bit.form));
  const headVolumeMm3 = sums.volumeMm3;
  const headPolarMm5 = sums.polarMm5;
  const headCentreMm = sums.firstMm4 / headVolumeMm3;
  addShank(sums, outlineLengthMm(outline), bit.shankDiameterMm / 2);
  const estimatedMassG = STEEL_DENSITY_G_PER_MM3 * sums.volumeMm3;
  const massG = bit.massG ?? estimatedMassG;
  const inertiaOf = (polarMm5: number) =>
    (STEEL_DENSITY_G_PER_MM3 * polarMm5 * (massG / estimatedMassG)) / (G_PER_KG * MM_PER_M * MM_PER_M);
  return {
    outline,
    rimRadiusMm: rimRadiusMm(outline),
    massG,
    massSource: bit.massG === undefined ? "estimated" : "weighed",
    estimatedMassG,
    centreOfMassMm: sums.firstMm4 / sums.volumeMm3,
    headMassG: massG * (headVolumeMm3 / sums.volumeMm3),
    headCentreMm,
    polarInertiaKgM2: inertiaOf(sums.polarMm5),
    headInertiaKgM2: inertiaOf(headPolarMm5),
  };
}

/**
 * Kinetic energy in J of the spinning bit, E = ½·I·ω² (mechanics, standard).
 * @example
 * storedEnergyJ(0.000_25, 12_000) // → 197.392
 */
export function storedEnergyJ(polarInertiaKgM2: number, rpm: number): number {
  const omegaRadPerS = (rpm * 2 * Math.PI) / 60;
  return 0.5 * polarInertiaKgM2 * omegaRadPerS * omegaRadPerS;
}

/** Greatest radius of an outline, mm. */
export function rimRadiusMm(outline: Outline): number {
  return outline.reduce((widestMm, segment) => Math.max(widestMm, segmentSpanMm(segment).greatestMm), 0);
}

/** Greatest radius that cuts. */
export function edgeRadiusMm(outline: Outline): number {
  return rimRadiusMm(outline.filter(({ role }) => role === "edge"));
}

function headSums(outline: Outline, hubRadiusMm: number, wingFillRatio: number): Sums {
  const sums: Sums = { volumeMm3: 0, firstMm4: 0, polarMm5: 0 };
  for (const segment of outline) {
    if (segment.role !== "edge") {
      addSolid(sums, segment, segment, 1);
      continue;
    }
    // Whole solid scaled by the fill, then the hub's missing share put back.
    addSolid(sums, segment, segment, wingFillRatio);
    const above = stretchesAbove(segment, segment, hubRadiusMm);
    for (const stretch of above) addCylinder(sums, stretch, hubRadiusMm, 1 - wingFillRatio);
    for (const stretch of outside(segment, above)) addSolid(sums, segment, stretch, 1 - wingFillRatio);
  }
  return sums;
}

function addShank(sums: Sums, fromMm: number, radiusMm: number): void {
  addCylinder(sums, { fromMm, toMm: fromMm + ASSUMED_SHANK_LENGTH_MM }, radiusMm, 1);
}

function addSolid(sums: Sums, segment: Segment, stretch: Stretch, share: number): void {
  const { radius2, firstRadius2, radius4 } = moments(segment, stretch);
  sums.volumeMm3 += share * Math.PI * radius2;
  sums.firstMm4 += share * Math.PI * firstRadius2;
  sums.polarMm5 += (share * Math.PI * radius4) / 2;
}

function addCylinder(sums: Sums, { fromMm, toMm }: Stretch, radiusMm: number, share: number): void {
  const volumeMm3 = share * Math.PI * radiusMm * radiusMm * (toMm - fromMm);
  sums.volumeMm3 += volumeMm3;
  sums.firstMm4 += (volumeMm3 * (fromMm + toMm)) / 2;
  sums.polarMm5 += (volumeMm3 * radiusMm * radiusMm) / 2;
}

function outside(segment: Segment, parts: readonly Stretch[]): Stretch[] {
  const rest: Stretch[] = [];
  let fromMm = segment.fromMm;
  for (const part of parts) {
    if (part.fromMm > fromMm) rest.push({ fromMm, toMm: part.fromMm });
    fromMm = part.toMm;
  }
  if (segment.toMm > fromMm) rest.push({ fromMm, toMm: segment.toMm });
  return rest;
}
