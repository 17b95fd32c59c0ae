/** One edge, or one run of a groove, to be cut. */
export type Edge = { readonly lengthMm: number; readonly grain: "end" | "long" };

/**
 * A cut to plan. `heightMm` is how far the bit stands out of the table or base; `fenceMm` is how far its
 * axis stands behind the fence face or pilot contact (design: one frame for table and handheld).
 */
export type Cut = EdgeCut | PanelCut | RabbetCut | GrooveCut;

/** A profile along an edge. */
export type EdgeCut = {
  readonly kind: "edge";
  readonly edges: readonly Edge[];
  /** Left out: 19 mm stock is assumed. */
  readonly thicknessMm?: number;
  /** Left out: the whole profile stands out. */
  readonly heightMm?: number;
  /** Left out: the pilot's radius, or 0 (half the bit shows) without one. */
  readonly fenceMm?: number;
};

/** A raised field around a panel: an edge cut with all the edges of one panel. */
export type PanelCut = Omit<EdgeCut, "kind"> & { readonly kind: "panel" };

/** A rectangular step along an edge. */
export type RabbetCut = {
  readonly kind: "rabbet";
  readonly edges: readonly Edge[];
  readonly depthMm: number;
  /** Left out: what the pilot gives, or the bit's radius without one. */
  readonly widthMm?: number;
};

/** A groove or dado at the bit's own width, cut by height. */
export type GrooveCut = {
  readonly kind: "groove";
  readonly edges: readonly Edge[];
  readonly depthMm: number;
};

/** Accepted ranges of a cut's fields. */
export const CUT_RANGES = {
  edges: { min: 1, max: 100 },
  lengthMm: { min: 10, max: 10000 },
  thicknessMm: { min: 3, max: 150 },
  heightMm: { min: 0.1, max: 200 },
  fenceMm: { min: 0, max: 100 },
  depthMm: { min: 0.1, max: 100 },
  widthMm: { min: 0.1, max: 100 },
} as const;
