import type { JointKind } from "./joint-kind.ts";

/** What weighs on a joint: `care` shows in the work, a `note` only informs. */
export type JointFinding =
  | {
      /** What goes in is thicker than the fit asked takes. */
      readonly code: "goes-in-too-tight";
      readonly severity: "care";
      readonly byMm: number;
      /** Shims that would put it right if the bits come apart; undefined if a setting does. */
      readonly shimMm: number | undefined;
    }
  | {
      readonly code: "goes-in-too-loose";
      readonly severity: "care";
      readonly byMm: number;
      readonly shimMm: number | undefined;
    }
  /** Somewhere the halves do not touch although everything that can meet does. */
  | {
      readonly code: "stays-open";
      readonly severity: "care";
      readonly gapMm: number;
      readonly fromEdgeMm: number;
      readonly fromFaceMm: number;
    }
  | { readonly code: "faces-not-flush"; readonly severity: "care"; readonly facesOffMm: number }
  | { readonly code: "ends-not-flush"; readonly severity: "care"; readonly endsOffMm: number }
  /** The cope's cutter at the tip does not reach the back of the rail. */
  | { readonly code: "back-not-reached"; readonly severity: "care"; readonly shortMm: number }
  /** Two bits that were a pair, ground by different amounts. */
  | {
      readonly code: "sharpened-apart";
      readonly severity: "care";
      readonly gapMm: number;
      readonly overlapMm: number;
      readonly differ: readonly PairDimension[];
    }
  | { readonly code: "pair-matches"; readonly severity: "note"; readonly kind: JointKind }
  | { readonly code: "not-a-pair"; readonly severity: "note" };

export type JointFindingCode = JointFinding["code"];

/** A dimension in which the bits of a pair differ. */
export type PairDimension = "thickness" | "depth" | "radius" | "land" | "angle";

/** Nobody sets, measures or sees less in wood, mm. Ours. */
export const SHOWS_MM = 0.05;
