/** What is put in place for a guide, before the bit is set. */
export type GuideStep =
  | {
      readonly code: "fix-template";
      readonly bearing: "tip" | "shank";
      readonly templateThicknessMm: number;
      /** How far the bit then stands out past the work or the template. */
      readonly standsOutMm: number;
    }
  | {
      readonly code: "fix-bushing-template";
      readonly bushingDiameterMm: number;
      readonly templateThicknessMm: number;
      /** From the template's line to the cut's, half of bushing less bit. */
      readonly offsetMm: number;
    }
  | { readonly code: "clamp-straightedge" }
  | { readonly code: "fix-pin" }
  | { readonly code: "clamp-on-sled" }
  | { readonly code: "lay-rails" };
