/** What a bushing leads the bit along: a groove, the outside of a piece, the inside of an opening, or one part of an inlay. */
export type BushingLine = "groove" | "outside" | "inside" | "recess" | "plug";

/** What is put in place for a guide, before the bit is set. */
export type GuideStep =
  | {
      readonly code: "fix-template";
      readonly bearing: "tip" | "shank";
      /** Whether more stands out past the line than the bit should take. */
      readonly sawFirst: boolean;
      readonly templateThicknessMm: number;
      /** How far the bit then stands out past the work or the template. */
      readonly standsOutMm: number;
    }
  | {
      readonly code: "fix-bushing-template";
      readonly bushingDiameterMm: number;
      readonly templateThicknessMm: number;
      readonly line: BushingLine;
      /** From the template's line to the cut's. */
      readonly offsetMm: number;
      /** Of an inlay: the least radius of the template's inside corners. */
      readonly leastCornerRadiusMm?: number;
      /** Of an inlay: the bushing for its other part, on the same template with the same bit; absent if the bit does not turn free in it. */
      readonly otherBushingDiameterMm?: number;
    }
  | { readonly code: "clamp-straightedge"; readonly inRuns: boolean }
  | { readonly code: "fix-pin" }
  | { readonly code: "clamp-on-sled" }
  | { readonly code: "lay-rails" };
