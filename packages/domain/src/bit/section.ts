import { areaBeyondMm2, stretchesAbove } from "./moments.ts";
import { type Outline, radiusOnSegmentMm } from "./outline.ts";

/** How bit and work stand to each other, in the same frame for table and handheld. */
export type BitSetting = {
  /** How far the bit stands out of the table or base. */
  readonly heightMm: number;
  /** How far its axis stands behind the fence face or pilot contact. */
  readonly fenceMm: number;
  /** Thickness of the work, against the table. */
  readonly thicknessMm: number;
};

/** Cutting radii that touch wood at a setting. */
export type RadiiInUse = { readonly greatestMm: number; readonly leastMm: number };

/**
 * Area in mm² of the wood removed from an edge: ∫ max(0, r(height − z) − fence) dz over the work's
 * thickness, in closed form. Only cutting edges remove wood.
 * @example
 * const outline = formOutline({ kind: "cove", diameterMm: 38.1, radiusMm: 12.7 });
 * removedAreaMm2(outline, { heightMm: 17.46, fenceMm: 6.35, thicknessMm: 19 }) // → 126.677
 */
export function removedAreaMm2(outline: Outline, { heightMm, fenceMm, thicknessMm }: BitSetting): number {
  const fromMm = heightMm - thicknessMm;
  let areaMm2 = 0;
  for (const segment of outline) {
    if (segment.role === "edge") areaMm2 += areaBeyondMm2(segment, fromMm, heightMm, fenceMm);
  }
  return areaMm2;
}

/** Width in mm cut at the table's plane, where a small rise of the bit takes its wood; 0 if nothing is cut. */
export function widthAtTableMm(outline: Outline, { heightMm, fenceMm }: BitSetting): number {
  return widthAtMm(outline, heightMm, fenceMm);
}

/** Width in mm cut at the far face of the work, where a small rise of the bit leaves its wood. */
export function widthAtTopMm(outline: Outline, { heightMm, fenceMm, thicknessMm }: BitSetting): number {
  return widthAtMm(outline, heightMm - thicknessMm, fenceMm);
}

/** Length in mm along the axis over which the bit cuts. */
export function engagedDepthMm(outline: Outline, setting: BitSetting): number {
  const within = stretchInWork(setting);
  let depthMm = 0;
  for (const segment of outline) {
    if (segment.role !== "edge") continue;
    for (const stretch of stretchesAbove(segment, within, setting.fenceMm)) {
      depthMm += stretch.toMm - stretch.fromMm;
    }
  }
  return depthMm;
}

/**
 * Length in mm along the axis over which a pass meets fresh wood. Moving the fence, that is all of it; raising the
 * bit, a parallel part of the edge only meets as much fresh wood as it was raised.
 */
export function freshDepthMm(
  outline: Outline,
  setting: BitSetting,
  moved: "height" | "fence",
  biteMm: number,
): number {
  const within = stretchInWork(setting);
  let depthMm = 0;
  for (const segment of outline) {
    if (segment.role !== "edge") continue;
    const isParallel = segment.kind === "line" && segment.startRadiusMm === segment.endRadiusMm;
    for (const stretch of stretchesAbove(segment, within, setting.fenceMm)) {
      const lengthMm = stretch.toMm - stretch.fromMm;
      depthMm += isParallel && moved === "height" ? Math.min(lengthMm, biteMm) : lengthMm;
    }
  }
  return depthMm;
}

/**
 * Greatest and least cutting radius in mm that touch wood. The rim is fast; the least radius is slow and burns. Undefined when
 * the bit misses the work.
 * @example
 * const outline = formOutline({ kind: "cove", diameterMm: 38.1, radiusMm: 12.7 });
 * radiiInUse(outline, { heightMm: 17.46, fenceMm: 6.35, thicknessMm: 19 }) // → { greatestMm: 19.05, leastMm: 6.35 }
 */
export function radiiInUse(outline: Outline, setting: BitSetting): RadiiInUse | undefined {
  const within = stretchInWork(setting);
  let greatestMm = Number.NEGATIVE_INFINITY;
  let leastMm = Number.POSITIVE_INFINITY;
  for (const segment of outline) {
    if (segment.role !== "edge") continue;
    for (const { fromMm, toMm } of stretchesAbove(segment, within, setting.fenceMm)) {
      const candidates = [fromMm, toMm];
      // An outward arc is widest over its centre, an inward one narrowest.
      if (segment.kind === "arc" && segment.centreMm > fromMm && segment.centreMm < toMm) {
        candidates.push(segment.centreMm);
      }
      for (const tMm of candidates) {
        const radiusMm = radiusOnSegmentMm(segment, tMm);
        greatestMm = Math.max(greatestMm, radiusMm);
        leastMm = Math.min(leastMm, radiusMm);
      }
    }
  }
  return greatestMm > setting.fenceMm
    ? { greatestMm, leastMm: Math.max(leastMm, setting.fenceMm) }
    : undefined;
}

/**
 * Distance in mm from the tip to the first point whose radius passes the fence offset; undefined if none does.
 * @example
 * const outline = formOutline({ kind: "cove", diameterMm: 38.1, radiusMm: 12.7 });
 * firstContactMm(outline, 6.35) // → 4.76
 */
export function firstContactMm(outline: Outline, fenceMm: number): number | undefined {
  for (const segment of outline) {
    if (segment.role !== "edge") continue;
    const [first] = stretchesAbove(segment, segment, fenceMm);
    if (first) return first.fromMm;
  }
  return undefined;
}

function widthAtMm(outline: Outline, tMm: number, fenceMm: number): number {
  for (const segment of outline) {
    if (tMm > segment.fromMm && tMm <= segment.toMm) {
      return segment.role === "edge" ? Math.max(0, radiusOnSegmentMm(segment, tMm) - fenceMm) : 0;
    }
  }
  return 0;
}

function stretchInWork({ heightMm, thicknessMm }: BitSetting) {
  return { fromMm: Math.max(0, heightMm - thicknessMm), toMm: heightMm };
}
