import type { Runs } from "./runs.ts";

/** Which setting is moved from pass to pass. `once`: the cut is made at its one setting. */
export type Approach = "height" | "fence" | "once";

/** What a kind of cut says of itself. */
export type BaseSetup = {
  readonly approach: Approach;
  readonly heightMm: number;
  readonly fenceMm: number;
  readonly thicknessMm: number;
  /** How often each edge is run at one setting: the rows of a surface, else 1. */
  readonly rows: number;
  /** What lies between the work and the table or base, mm: a template; absent if nothing does. */
  readonly underlayMm?: number;
  /** The template that a bearing runs on. */
  readonly template?: TemplateSetup;
  /** The bushing that runs along a template. */
  readonly bushing?: BushingSetup;
  /** Its runs side by side, each with a setting of its own, if it is wider than the bit. */
  readonly runs?: Runs | undefined;
  /** A groove to be wasted first with a straight bit, because this bit can only be fed at full depth. */
  readonly waste: Waste | undefined;
  /** What was taken for granted, by code. */
  readonly assumed: readonly SetupAssumption[];
  /** The field to name when the setting cannot be reached, and the height at which it reads zero. */
  readonly reach: { readonly pointer: string; readonly zeroMm: number };
};

export type Waste = { readonly widthMm: number; readonly depthMm: number };

/** A template under the work or over it, and the bearing that runs on it. */
export type TemplateSetup = {
  readonly bearing: "tip" | "shank";
  readonly thicknessMm: number;
  readonly bearingHeightMm: number;
};

export type BushingSetup = {
  readonly diameterMm: number;
  readonly templateThicknessMm: number;
  /** Whether the bit comes out of the work below: then its depth is the work's own. */
  readonly cutsThrough: boolean;
};

export type SetupAssumption =
  | { readonly code: "template-assumed"; readonly thicknessMm: number }
  | { readonly code: "overhang-assumed"; readonly overhangMm: number }
  | { readonly code: "thickness-assumed"; readonly thicknessMm: number }
  | { readonly code: "height-assumed"; readonly cutterMm: number }
  | { readonly code: "fence-assumed"; readonly fenceMm: number };

/** The rounding allowed in a setting typed by a person before it counts as out of reach, mm. */
export const REACH_SLACK_MM = 1e-6;
