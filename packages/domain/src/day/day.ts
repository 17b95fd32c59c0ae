import type { GuideName } from "../cut/guide-name.ts";
import type { Policy } from "../policy/policy.ts";

/** One set-up of a day: one bit at one height and fence in one router as it is mounted. */
export type DaySetup = {
  readonly id: string;
  /** The router as it is mounted: it stays set up while others work. */
  readonly station: string;
  readonly bitId: string;
  readonly guide: GuideName | undefined;
  readonly heightMm: number;
  /** Undefined if nothing is set to a distance. */
  readonly fenceMm: number | undefined;
  /** The dial's mark or speed, as text or number. Undefined if there is nothing to set. */
  readonly dial: string | number | undefined;
  /** Ids of set-ups that must be finished before this one starts. */
  readonly after: readonly string[];
};

/** What each change takes, in minutes. */
export type ChangeoverTimes = Pick<
  Policy,
  | "bitChangeMinutes"
  | "heightSettingMinutes"
  | "fenceSettingMinutes"
  | "dialSettingMinutes"
  | "stationMoveMinutes"
  | "testPieceMinutes"
>;

/** One thing to change before a set-up, and how long it takes. */
export type Change = { readonly minutes: number } & (
  | { readonly code: "move"; readonly fromStation: string; readonly toStation: string }
  | { readonly code: "bit"; readonly bitId: string }
  | { readonly code: "height"; readonly heightMm: number }
  | { readonly code: "fence"; readonly fenceMm: number; readonly guide: GuideName | undefined }
  | { readonly code: "guide"; readonly guide: GuideName }
  | { readonly code: "dial"; readonly dial: string | number }
  | { readonly code: "test-piece" }
);

export type ChangeCode = Change["code"];

export type DayStep = {
  readonly setupId: string;
  /** What must be changed before it, in the order of work. */
  readonly changes: readonly Change[];
  /** What that takes, in minutes. */
  readonly changeMin: number;
};

export type DayOrder = {
  readonly order: readonly DayStep[];
  /** All changes of the day together, in minutes. */
  readonly changeoverMin: number;
  /** No order can take less, in minutes. */
  readonly lowerBoundMin: number;
  /** Whether no order takes less than this one. */
  readonly isProvenLeast: boolean;
};
