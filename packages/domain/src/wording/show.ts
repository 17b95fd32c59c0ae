import {
  showAboutLength,
  showArea,
  showFeed,
  showFineLength,
  showForce,
  showLength,
  showMass,
  showRotation,
  showSpeed,
} from "../quantity/show.ts";
import type { Mark } from "../router/router.ts";

/** Which units a sentence is written in; `both` gives the metric and the imperial in brackets. */
export type Units = "metric" | "imperial" | "both";

/** Quantities as text in the units asked for: what a sentence is given to speak with. */
export type Show = {
  readonly length: (mm: number) => string;
  /** A distance of a rule of thumb, which nobody measures closer than to the millimetre. */
  readonly about: (mm: number) => string;
  /** A very small length, in micrometres or thousandths of an inch. */
  readonly fine: (mm: number) => string;
  readonly mass: (g: number) => string;
  readonly speed: (mPerS: number) => string;
  readonly feed: (mPerMin: number) => string;
  readonly force: (n: number) => string;
  readonly area: (mm2: number) => string;
  readonly rotation: (rpm: number) => string;
  readonly percent: (ratio: number) => string;
  readonly mark: (mark: Mark) => string;
};

/**
 * How quantities are shown in these units: for each kind of quantity a function from the number, in its own unit, to text.
 * @example
 * showIn("both").length(88.9) // → "88.9 mm (3-1/2 in)"
 */
export function showIn(units: Units): Show {
  return SHOWS[units];
}

const SHOWS: Readonly<Record<Units, Show>> = {
  metric: showOf("metric"),
  imperial: showOf("imperial"),
  both: showOf("both"),
};

function showOf(units: Units): Show {
  const inUnits = (show: (value: number, units: "metric" | "imperial") => string) => (value: number) =>
    units === "both" ? `${show(value, "metric")} (${show(value, "imperial")})` : show(value, units);
  return {
    length: inUnits(showLength),
    about: inUnits(showAboutLength),
    fine: inUnits(showFineLength),
    mass: inUnits(showMass),
    speed: inUnits(showSpeed),
    feed: inUnits(showFeed),
    force: inUnits(showForce),
    area: inUnits(showArea),
    rotation: showRotation,
    percent: (ratio) => `${Math.round(ratio * 100)} %`,
    mark: (mark) => (typeof mark === "number" ? String(Number(mark.toFixed(2))) : mark),
  };
}
