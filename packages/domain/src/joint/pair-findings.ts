import type { Bit } from "../bit/bit.ts";
import { formOutline } from "../bit/form/registry.ts";
import { outlineLengthMm } from "../bit/outline.ts";
import { type JointFinding, type PairDimension, SHOWS_MM } from "./finding.ts";
import type { JointKind } from "./joint-kind.ts";
import type { Bits, JointAsked } from "./kind/define.ts";
import { slotWidthMm } from "./kind/slot.ts";
import { solveJoint } from "./solve-joint.ts";

/** Two bits that belong together: the joint they make, its halves in order, stock for it, and each dimension that must be the same. */
type Pair = {
  readonly kind: JointKind;
  readonly bits: Bits;
  readonly asked: JointAsked;
  readonly sizes: readonly (readonly [PairDimension, number, number])[];
};

/**
 * Whether two bits are a pair, in either order, as they measure now: cope and stick, tongue and groove, or two dovetails of one angle.
 * Sharpened together they stay one; sharpened apart they leave a gap, which is worked out by laying their halves on each other.
 * @example
 * const bitOf = (form) => ({ form, shankDiameterMm: 12.7, wings: 2 });
 * const tongue = { kind: "tongue", diameterMm: 41.3, tongueThicknessMm: 6.35, tongueLengthMm: 9.5, cuttingLengthMm: 25 };
 * const groove = { kind: "groove", diameterMm: 41.1, grooveWidthMm: 6.35, grooveDepthMm: 9.4, cuttingLengthMm: 25 };
 * pairFindings(bitOf(tongue), bitOf(groove)) // → [{ code: "sharpened-apart", gapMm: 0.1, differ: ["depth"] }]
 */
export function pairFindings(bit: Bit, otherBit: Bit): JointFinding[] {
  const pair = pairOf(bit, otherBit) ?? pairOf(otherBit, bit);
  if (pair === undefined) return [{ code: "not-a-pair", severity: "note" }];
  const { kind, bits, asked, sizes } = pair;
  const { gap, overlap } = solveJoint(kind, bits, asked).closure;
  const differ = sizes.filter(([, one, two]) => Math.abs(one - two) > SHOWS_MM).map(([name]) => name);
  if (differ.length === 0 && Math.max(gap.mm, overlap.mm) <= SHOWS_MM) {
    return [{ code: "pair-matches", severity: "note", kind }];
  }
  return [{ code: "sharpened-apart", severity: "care", gapMm: gap.mm, overlapMm: overlap.mm, differ }];
}

function pairOf(one: Bit, two: Bit): Pair | undefined {
  const [first, second] = [one.form, two.form];
  if (first.kind === "stick" && second.kind === "cope") {
    return {
      kind: "cope-and-stick",
      bits: [one, two],
      // Some wood behind the groove, and no more than the cope's cutter at the tip takes.
      asked: { thicknessMm: outlineLengthMm(formOutline(first)) + LEAST_BACK_MM },
      sizes: [
        ["thickness", first.grooveWidthMm, second.grooveWidthMm],
        ["depth", first.grooveDepthMm, second.grooveDepthMm],
        ["radius", first.radiusMm, second.radiusMm],
        ["land", first.landMm, second.landMm],
      ],
    };
  }
  if (first.kind === "groove" && second.kind === "tongue") {
    return {
      kind: "tongue-and-groove",
      bits: [one, two],
      asked: { thicknessMm: Math.min(first.cuttingLengthMm, second.cuttingLengthMm) },
      sizes: [
        ["thickness", slotWidthMm(one), second.tongueThicknessMm],
        ["depth", first.grooveDepthMm, second.tongueLengthMm],
      ],
    };
  }
  if (first.kind !== "dovetail" || second.kind !== "dovetail") return undefined;
  const depthMm = Math.min(first.cuttingLengthMm, second.cuttingLengthMm);
  // The tail's waist is as wide as the groove's mouth, and its board as thick as one run on each face takes.
  return {
    kind: "sliding-dovetail",
    bits: [one, two],
    asked: {
      thicknessMm: 2 * depthMm,
      otherThicknessMm: Math.min(first.diameterMm, second.diameterMm),
      depthMm,
    },
    sizes: [["angle", first.angleDeg, second.angleDeg]],
  };
}

/** Wood behind the groove, mm: no cutter at a cope's tip is shorter than this. */
const LEAST_BACK_MM = 1;
