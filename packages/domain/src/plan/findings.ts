import type { GuideFinding } from "../guide/finding.ts";
import type { LimitName } from "../limit/ceiling.ts";
import type { Mounting, MountingClearance } from "../router/mounting.ts";
import type { WasteGroove } from "./waste-groove.ts";

/** What weighs on the verdict: `refuse` stops the plan, `care` qualifies it, a `note` only informs. */
export type Severity = "refuse" | "care" | "note";

type Refusal =
  | { readonly code: "table-only" }
  | {
      readonly code: "router-too-fast";
      readonly slowestRpm: number;
      readonly slowestRpmHighest: number;
      readonly breaks: readonly LimitName[];
      readonly limitRpm: number;
    }
  | {
      readonly code: "no-collet-fits";
      readonly shankDiameterMm: number;
      readonly colletDiametersMm: readonly number[];
    }
  | { readonly code: "too-many-passes"; readonly leaveMm: number | undefined }
  | { readonly code: "too-heavy-at-once"; readonly leaveMm: number | undefined }
  | { readonly code: "climb-not-allowed"; readonly reason: "table" | "policy" };

type Care =
  | { readonly code: "handheld-with-care" }
  | { readonly code: "carried-on-rails" }
  | { readonly code: "large-bit"; readonly clearance: MountingClearance }
  | { readonly code: "light-climb-cut"; readonly biteMaxMm: number }
  | {
      readonly code: "thin-chip";
      readonly pass: number;
      readonly chipMeanMm: number;
      readonly chipMeanMinMm: number;
      readonly speedForChipRpm: number;
    }
  | { readonly code: "trials-contradict"; readonly shookRpm: number }
  | { readonly code: "shook-in-other-router"; readonly shookRpm: number }
  | { readonly code: "came-loose-before"; readonly times: number }
  | { readonly code: "chattered-before"; readonly times: number };

type Note =
  | { readonly code: "large-bit"; readonly clearance: MountingClearance }
  /** A bit that is wider below: along an edge that the work is fed past, in a slot, or in one that begins at a hole of its own. */
  | { readonly code: "feed-only"; readonly way: "edge" | "slot" | "own-hole" }
  | ({ readonly code: "waste-first" } & WasteGroove)
  | { readonly code: "burn-risk"; readonly chipMeanMm: number; readonly slowestEdgeMPerS: number }
  | { readonly code: "tear-out-risk"; readonly endGrainEdges: number }
  | { readonly code: "melts" }
  | { readonly code: "frays-near-face"; readonly mounting: Mounting }
  | { readonly code: "frays-far-face"; readonly mounting: Mounting }
  | { readonly code: "chips-packed" }
  | { readonly code: "compression-unknown"; readonly mounting: Mounting }
  | {
      readonly code: "compression-shallow";
      readonly mounting: Mounting;
      readonly heightMm: number;
      readonly upCutLengthMm: number;
    }
  | { readonly code: "scorched-before"; readonly times: number }
  | { readonly code: "tore-out-before"; readonly times: number };

export type Finding =
  | GuideFinding
  | (Refusal & { readonly severity: "refuse" })
  | (Care & { readonly severity: "care" })
  | (Note & { readonly severity: "note" });

export type FindingCode = Finding["code"];
