import type { GuideName } from "../cut/guide-name.ts";
import type { Mounting } from "../router/mounting.ts";

/** One way to guide a cut: with the router held so. */
export type GuideOffer = { readonly mounting: Mounting; readonly guide: GuideName };

/** Why a cut is not guided. Each of them stops the plan. */
export type GuideFinding =
  | { readonly code: "nothing-guides"; readonly severity: "refuse"; readonly offers: readonly GuideOffer[] }
  | {
      readonly code: "guide-does-not-serve";
      readonly severity: "refuse";
      readonly guide: GuideName;
      readonly offers: readonly GuideOffer[];
    }
  | {
      readonly code: "bearing-without-wood";
      readonly severity: "refuse";
      readonly woodMm: number;
      readonly leastMm: number;
    }
  | {
      readonly code: "template-too-thin";
      readonly severity: "refuse";
      readonly templateThicknessMm: number;
      readonly leastMm: number;
    }
  | {
      readonly code: "bushing-too-small";
      readonly severity: "refuse";
      readonly bushingDiameterMm: number;
      readonly bitDiameterMm: number;
    };
