import { DomainError, type Fault, faultsUnder } from "../quantity/fault.ts";
import { median } from "../quantity/median.ts";
import { rangeFaults } from "../quantity/range.ts";
import { groundDownToBearing, onSameBearing, shrunkBearingFaults } from "./bearing.ts";
import { BIT_RANGES, type Bit } from "./bit.ts";
import { formDiameterMm } from "./diameter.ts";
import { bitFaults, formFaults } from "./faults.ts";
import { MEASURED_SLACK_MM } from "./form/fit.ts";
import { GIVEN_OUTLINE_RANGES } from "./form/given-segment.ts";
import { type Form, formOutline, formSummary } from "./form/registry.ts";
import { outlineLengthMm } from "./outline.ts";

/** What was measured after a sharpening. */
export type Sharpening = {
  readonly diameterMm?: number;
  readonly massG?: number;
  /** The whole form as it is now, of the same kind; for an outline given point by point it is needed with a new diameter. */
  readonly form?: Form;
};

/** The diameter before and after one sharpening. */
export type SharpeningLoss = { readonly beforeMm: number; readonly afterMm: number };

export type SharpeningsLeft = {
  readonly left: number;
  /** Diameter that one sharpening is taken to cost. */
  readonly lossMm: number;
  readonly basis: "own-history" | "estimate";
};

type Life = {
  readonly diameterMm: number;
  readonly smallestDiameterMm: number;
  readonly past: readonly SharpeningLoss[];
};

/** What one sharpening costs if the bit's own were not measured. */
type LossPolicy = { readonly sharpeningLossAssumedMm: number };

/** The same bit on the same scales may show this much more, g. Ours: one step of a kitchen scale. */
const WEIGHED_SLACK_G = 1;

/** Most that one sharpening takes off a diameter: a tip's thickness on both sides, and a fifth of a small bit. Ours. */
const MOST_LOSS_MM = 6;
const MOST_LOSS_RATIO = 0.2;

/** A last sharpening that just reaches the smallest diameter counts, whatever rounding says. */
const SLACK_MM = 1e-9;

/**
 * The bit after a sharpening: the new diameter replaces the form's own, a new mass the old one. A mass that was not weighed again
 * stays, because the bit only got lighter and the heavier one is the safe side. Throws a DomainError with every fault
 * (`/diameterMm`, `/massG`, `/form`, `/form/…`) if the bit would have grown by more than measuring explains or lost more than one sharpening takes, or if
 * other dimensions no longer fit the new diameter.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * sharpened(bit, { diameterMm: 12.5 }).form.diameterMm // → 12.5
 */
export function sharpened(bit: Bit, { diameterMm, massG, form }: Sharpening): Bit {
  const given = [
    ...rangeFaults("/diameterMm", diameterMm, GIVEN_OUTLINE_RANGES.diameterMm),
    ...rangeFaults("/massG", massG, BIT_RANGES.massG),
    ...formKindFaults(bit, diameterMm, form),
  ];
  if (given.length > 0) throw new DomainError(given);
  const next: Bit = {
    ...bit,
    form: sharpenedForm(bit.form, form, diameterMm),
    ...(massG === undefined ? {} : { massG }),
  };
  const faults = bitFaults(next).map((fault) => asAsked(fault, diameterMm, form !== undefined));
  if (faults.length > 0) throw new DomainError(faults);
  const grown = [
    ...growthFaults(bit, next, diameterMm),
    ...massFaults(bit, massG),
    ...faultsUnder("/form", shrunkBearingFaults(next.form, bit.form)),
  ];
  if (grown.length > 0) throw new DomainError(grown);
  return next;
}

/**
 * How many sharpenings are left until the smallest usable diameter, at the median loss of this bit's own past ones, or at the
 * policy's if there are none: 0 at or under it. A loss too small to measure is taken at what measuring can miss.
 * @example
 * sharpeningsLeft({ diameterMm: 12.7, smallestDiameterMm: 12, past: [] }, { sharpeningLossAssumedMm: 0.3 }).left // → 2
 */
export function sharpeningsLeft(
  { diameterMm, smallestDiameterMm, past }: Life,
  { sharpeningLossAssumedMm }: LossPolicy,
): SharpeningsLeft {
  const own = median(past.map(({ beforeMm, afterMm }) => beforeMm - afterMm));
  const lossMm = own === undefined ? sharpeningLossAssumedMm : Math.max(own, MEASURED_SLACK_MM);
  const left = Math.max(0, Math.floor((diameterMm - smallestDiameterMm + SLACK_MM) / lossMm));
  return { left, lossMm, basis: own === undefined ? "estimate" : "own-history" };
}

function formKindFaults(bit: Bit, diameterMm: number | undefined, form: Form | undefined): Fault[] {
  const { kind } = bit.form;
  if (form !== undefined && form.kind !== kind) {
    return [{ pointer: "/form/kind", code: "unknown-choice", values: { names: [kind] } }];
  }
  const isGivenByPoints = Object.values(formSummary(kind).dimensions).some(({ type }) => type === "segments");
  if (!isGivenByPoints || form !== undefined || diameterMm === undefined) return [];
  return [{ pointer: "/form", code: "outline-needed", values: {} }];
}

/** The form as it is now: what was measured of it, and what a new diameter alone leaves as it was. */
function sharpenedForm(before: Form, given: Form | undefined, diameterMm: number | undefined): Form {
  if (given === undefined) return diameterMm === undefined ? before : groundForm(before, diameterMm);
  // Measured as what it was: nothing was ground, and nothing is known that was not.
  if (diameterMm === undefined && given.diameterMm === before.diameterMm) return given;
  return onSameBearing(diameterMm === undefined ? given : { ...given, diameterMm }, before);
}

/** A smaller cutter on the same bearing: the bearing is not ground, and the profile is what is left between the two. */
function groundForm(before: Form, diameterMm: number): Form {
  const ground = groundDownToBearing(onSameBearing({ ...before, diameterMm }, before), before);
  const largestMm = largestRadiusMm(ground);
  return "radiusMm" in ground && largestMm !== undefined ? { ...ground, radiusMm: largestMm } : ground;
}

/** The largest radius that fits a form, if its own is too large. */
function largestRadiusMm(form: Form): number | undefined {
  for (const { pointer, values } of formFaults(form)) {
    if (pointer === "/radiusMm" && "max" in values && typeof values.max === "number") return values.max;
  }
  return undefined;
}

/** A diameter given beside the form is named where it was given, and no field that nobody sent ever is. */
function asAsked(fault: Fault, diameterMm: number | undefined, isFormGiven: boolean): Fault {
  const isAboutDiameter = diameterMm !== undefined && (fault.pointer === "/form/diameterMm" || !isFormGiven);
  return isAboutDiameter && fault.pointer.startsWith("/form") ? { ...fault, pointer: "/diameterMm" } : fault;
}

function growthFaults(before: Bit, after: Bit, diameterMm: number | undefined): Fault[] {
  const code = "grew-in-sharpening";
  const pointer = diameterMm === undefined ? "/form" : "/diameterMm";
  const faults: Fault[] = [];
  const maxDiameterMm = formDiameterMm(before.form) + MEASURED_SLACK_MM;
  if (formDiameterMm(after.form) > maxDiameterMm) {
    faults.push({
      pointer,
      code,
      values: { maxDiameterMm },
    });
  }
  const beforeMm = formDiameterMm(before.form);
  const minDiameterMm = beforeMm - Math.min(MOST_LOSS_MM, MOST_LOSS_RATIO * beforeMm);
  if (formDiameterMm(after.form) < minDiameterMm) {
    faults.push({ pointer, code: "sharpened-too-far", values: { minDiameterMm } });
  }
  const maxLengthMm = outlineLengthMm(formOutline(before.form)) + MEASURED_SLACK_MM;
  if (outlineLengthMm(formOutline(after.form)) > maxLengthMm) {
    faults.push({ pointer: "/form", code, values: { maxLengthMm } });
  }
  return faults;
}

function massFaults({ massG: beforeG }: Bit, afterG: number | undefined): Fault[] {
  if (beforeG === undefined || afterG === undefined || afterG <= beforeG + WEIGHED_SLACK_G) return [];
  return [
    {
      pointer: "/massG",
      code: "grew-in-sharpening",
      values: { maxMassG: beforeG + WEIGHED_SLACK_G },
    },
  ];
}
