/** One edge, one run of a groove, or one row of a surface, to be cut. */
export type Edge = { readonly lengthMm: number; readonly grain: "end" | "long" };

/** Against the rotation is the only ordinary way; with it (a climb cut) the bit pulls. */
export type FeedAgainst = "against-rotation" | "with-rotation";

/**
 * A cut to plan. `heightMm` is how far the bit stands out of the table or base; `fenceMm` is how far its axis stands behind the
 * fence face or pilot contact (one frame for table and handheld).
 */
export type Cut = EdgeCut | PanelCut | JointCut | RabbetCut | GrooveCut | TrimCut | SurfaceCut;

type AnyCut = {
  readonly edges: readonly Edge[];
  /** Left out: against the rotation. */
  readonly feedDirection?: FeedAgainst;
};

type AlongEdge = {
  /** The edge is curved: in a table it is run against the pilot, without a fence. */
  readonly curved?: boolean;
  /** Handheld: the outside of the work, or the inside of an opening. Left out: outside. */
  readonly side?: "outside" | "inside";
};

type Profile = AnyCut &
  AlongEdge & {
    /** Left out: 19 mm stock is assumed. */
    readonly thicknessMm?: number;
    /** Left out: the whole profile stands out. */
    readonly heightMm?: number;
    /** Left out: the pilot's radius; without one the least radius of the profile, or 0 (half shows) for a parallel bit. */
    readonly fenceMm?: number;
  };

/** A profile along an edge. */
export type EdgeCut = Profile & { readonly kind: "edge" };

/** A raised field around a panel: an edge cut with all the edges of one panel. */
export type PanelCut = Profile & { readonly kind: "panel" };

/** One half of a joint along an edge: tongue, groove, cope, stick, lock-mitre, drawer or finger joint. */
export type JointCut = Profile & { readonly kind: "joint" };

/** A rectangular step along an edge. */
export type RabbetCut = AnyCut &
  AlongEdge & {
    readonly kind: "rabbet";
    readonly depthMm: number;
    /** Left out: what the pilot gives, or the bit's radius without one. */
    readonly widthMm?: number;
  };

/** A groove or dado at the bit's own width; a dovetail, keyhole or T-slot with a bit of that form. */
export type GrooveCut = AnyCut & {
  readonly kind: "groove";
  readonly depthMm: number;
  /** Starts or ends inside the work. */
  readonly stopped?: boolean;
};

/** Trims an overhang flush with a template. */
export type TrimCut = AnyCut &
  AlongEdge & {
    readonly kind: "trim";
    readonly overhangMm: number;
    readonly thicknessMm?: number;
  };

/** Planes a surface in overlapping rows; each edge is one row's length. */
export type SurfaceCut = AnyCut & {
  readonly kind: "surface";
  readonly depthMm: number;
  /** Width of the surface, square to the rows. */
  readonly widthMm: number;
  /** How far each row moves over, as a share of the bit's diameter. Left out: 0.5. */
  readonly stepOverRatio?: number;
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
  overhangMm: { min: 0.1, max: 30 },
  surfaceWidthMm: { min: 10, max: 3000 },
  stepOverRatio: { min: 0.1, max: 0.9 },
} as const;
