/** A router as the shop knows it. */
export type Router = {
  /** Slowest and fastest no-load speed on the rating plate. Equal on a single-speed router. */
  readonly minRpm: number;
  readonly maxRpm: number;
  /** Absent on a single-speed router. */
  readonly dial?: Dial;
  readonly inputPowerW?: number;
  /** Shank diameters its collets take. Absent: not known; empty: no collet is fit for use. */
  readonly colletDiametersMm?: readonly number[];
};

/** The numbered or lettered speed dial. */
export type Dial = {
  /** Both numbers, or both single letters; a letter counts as its place in the alphabet. */
  readonly marks: { readonly first: Mark; readonly last: Mark };
  /** Detents from one whole mark to the next: 1 clicks at whole marks, 2 at halves; 0 is stepless. Default: 1. */
  readonly steps?: number;
  /** Tachometer readings, in rising order of mark. A mark may be there twice: the second reading backs the first. */
  readonly readings?: readonly DialReading[];
  /** Readings that are kept and count for nothing. */
  readonly unusedReadings?: readonly UnusedReading[];
};

export type Mark = number | string;

export type DialReading = {
  readonly mark: Mark;
  readonly rpm: number;
  /** Somebody stands by it although it does not fit the router's range or the other readings. */
  readonly isConfirmed?: boolean;
};

/** A reading that counts for nothing, and why. */
export type UnusedReading = Pick<DialReading, "mark" | "rpm"> & {
  readonly reason: "contradicted" | "lapsed" | "off-dial";
};

/** Accepted ranges of a router's fields. */
export const ROUTER_RANGES = {
  rpm: { min: 1000, max: 60000 },
  inputPowerW: { min: 50, max: 10000 },
  colletDiametersMm: { min: 3, max: 20 },
  mark: { min: 0, max: 100 },
  steps: { min: 0, max: 20 },
} as const;
