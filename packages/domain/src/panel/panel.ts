import type { Bit } from "../bit/bit.ts";
import type { Policy } from "../policy/policy.ts";
import { EMC_RANGES } from "../wood/emc.ts";
import { MOVEMENT_RANGES } from "../wood/movement.ts";
import type { Wood } from "../wood/wood.ts";

/** The air of one end of the year. */
export type Air = { readonly relativeHumidityPercent: number; readonly temperatureC: number };

/** The driest and the wettest air a panel lives in. */
export type Climate = { readonly driest: Air; readonly wettest: Air };

/** The groove around the inside of a frame. */
export type Groove = { readonly depthMm: number; readonly widthMm: number };

/** How boards were sawn: the width of a flatsawn one moves most, that of a quartersawn one about half as much. */
export type Sawn = "flat" | "quarter";

/** A side of a panel by the name of its frame's. */
export type Side = "width" | "height";

/** What a frame leaves open, between its inside edges. */
export type Opening = {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Frames like this one. Default: 1. */
  readonly count?: number;
  /** Default: the grain runs along the height. */
  readonly grainAlong?: Side;
  /** A panel that was cut already. Default: the size is found. */
  readonly panel?: { readonly widthMm: number; readonly heightMm: number };
};

/** Several openings that share wood, climate, groove and bit. */
export type PanelsInput = {
  readonly openings: readonly Opening[];
  readonly groove: Groove;
  readonly thicknessMm: number;
  readonly wood: Wood;
  /** Default: taken as flatsawn, which moves most. */
  readonly sawn?: Sawn;
  /** Moisture content of the wood when it is cut. */
  readonly moisture: { readonly percent: number; readonly tolerancePercent?: number };
  readonly climate: Climate;
  /** The bit that raises the edges. Default: the panel stays flat. */
  readonly bit?: Bit;
  /** How far the bit stands out. Default: the height that leaves a tongue the groove takes. */
  readonly heightMm?: number;
  /** How far the bit's axis stands behind the fence. Default: the pilot's radius. */
  readonly fenceMm?: number;
  readonly policy: Policy;
};

/** Accepted ranges of what a panel is sized from. */
export const PANEL_RANGES = {
  openings: { min: 1, max: 50 },
  count: { min: 1, max: 100 },
  openingMm: { min: 50, max: 3000 },
  panelMm: { min: 50, max: 3100 },
  thicknessMm: { min: 3, max: 60 },
  grooveDepthMm: { min: 3, max: 40 },
  grooveWidthMm: { min: 2, max: 40 },
  moisturePercent: MOVEMENT_RANGES.moisturePercent,
  moistureTolerancePercent: { min: 0, max: 10 },
  temperatureC: { min: EMC_RANGES.temperatureC.min, max: 60 },
  relativeHumidityPercent: EMC_RANGES.relativeHumidityPercent,
} as const;
