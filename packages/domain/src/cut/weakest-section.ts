import type { Bit } from "../bit/bit.ts";
import { outlineLengthMm, segmentSpanMm } from "../bit/outline.ts";
import { bendingStressMPa, equivalentStressMPa, torsionStressMPa } from "../bit/shank.ts";
import type { BitSolid } from "../bit/solid.ts";
import { MM_PER_M } from "../quantity/units.ts";

/** Diameter of a solid rod as strong as a fluted cutter, as a share of the cutter's own. Source: machining practice for end mills, from memory. */
const FLUTED_RATIO = 0.8;

/** A place of the bit that a force at its edge bends. */
export type Section = {
  readonly diameterMm: number;
  /** From the force to this place. */
  readonly lengthMm: number;
};

/**
 * The places where a force at `contactMm` from the tip may break the bit: the shank at the collet, and every neck or cutter
 * between that is thinner, at its end nearest the collet.
 */
export function weakSections(
  { shankDiameterMm }: Bit,
  { outline }: Pick<BitSolid, "outline">,
  contactMm: number,
  stickOutMm: number,
): Section[] {
  const headMm = outlineLengthMm(outline) - contactMm;
  const sections: Section[] = [{ diameterMm: shankDiameterMm, lengthMm: stickOutMm + headMm }];
  for (const segment of outline) {
    // A bearing is carried by its screw, and what lies beyond the force is not bent.
    if (segment.role === "pilot" || segment.toMm <= contactMm) continue;
    const share = segment.role === "edge" ? FLUTED_RATIO : 1;
    // A cutter that tapers to its tip is as strong as where it meets the next part; a neck is one radius all along.
    const { leastMm } =
      segment.kind === "line" && segment.startRadiusMm === segment.endRadiusMm
        ? segmentSpanMm(segment)
        : { leastMm: Number.POSITIVE_INFINITY };
    const diameterMm = 2 * leastMm * share;
    if (diameterMm < shankDiameterMm) sections.push({ diameterMm, lengthMm: segment.toMm - contactMm });
  }
  return sections;
}

/** Greatest stress in MPa at any of these places under a force in N at a radius in mm (bending and torsion, von Mises). */
export function greatestStressMPa(sections: readonly Section[], forceN: number, radiusMm: number): number {
  let greatest = 0;
  for (const { diameterMm, lengthMm } of sections) {
    const bending = bendingStressMPa({ shankDiameterMm: diameterMm, lengthMm }, forceN);
    const torsion = torsionStressMPa(diameterMm, (forceN * radiusMm) / MM_PER_M);
    greatest = Math.max(greatest, equivalentStressMPa(bending, torsion));
  }
  return greatest;
}
