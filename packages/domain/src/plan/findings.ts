import type { LimitName } from "../limit/ceiling.ts";
import type { MountingClearance } from "../router/mounting.ts";

/** What weighs on the verdict: `refuse` stops the plan, `care` qualifies it. */
export type Finding =
  | { readonly code: "table-only"; readonly severity: "refuse" }
  | {
      readonly code: "router-too-fast";
      readonly severity: "refuse";
      readonly slowestRpm: number;
      readonly slowestRpmHighest: number;
      readonly breaks: readonly LimitName[];
      readonly limitRpm: number;
    }
  | {
      readonly code: "no-collet-fits";
      readonly severity: "refuse";
      readonly shankDiameterMm: number;
      readonly colletDiametersMm: readonly number[];
    }
  | { readonly code: "too-many-passes"; readonly severity: "refuse" }
  | { readonly code: "handheld-with-care"; readonly severity: "care" }
  | { readonly code: "large-bit"; readonly severity: "care"; readonly clearance: MountingClearance };

export type FindingCode = Finding["code"];
