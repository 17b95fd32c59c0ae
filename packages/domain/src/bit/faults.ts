import { type Fault, faultsUnder } from "../quantity/fault.ts";
import { fieldFaults, recordFaults } from "../quantity/field.ts";
import { rangeFaults } from "../quantity/range.ts";
import { BIT_RANGES, type Bit } from "./bit.ts";
import type { DimensionSpec } from "./form/define.ts";
import { type Form, formFitFaults, formSummary } from "./form/registry.ts";
import { withoutContradictions } from "./no-value-fits.ts";
import { unlikelyBitFaults } from "./plausible.ts";

/**
 * Everything wrong with a bit: fields outside their range and dimensions that do not fit each other, then what was measured of it
 * and cannot be.
 * Pointers start at the bit. An empty list means the geometry has an answer.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * bitFaults(bit) // → []
 * bitFaults({ ...bit, shankDiameterMm: 40 }) // → [{ pointer: "/shankDiameterMm", code: "out-of-range", values: { given: 40, min: 3, max: 20 } }]
 */
export function bitFaults(bit: Bit): Fault[] {
  const own = [
    ...rangeFaults("/shankDiameterMm", bit.shankDiameterMm, BIT_RANGES.shankDiameterMm),
    ...rangeFaults("/wings", bit.wings, BIT_RANGES.wings),
    ...rangeFaults("/massG", bit.massG, BIT_RANGES.massG),
    ...rangeFaults("/runOutMm", bit.runOutMm, BIT_RANGES.runOutMm),
    ...rangeFaults("/stickOutMm", bit.stickOutMm, BIT_RANGES.stickOutMm),
    ...rangeFaults("/markedMaxRpm", bit.markedMaxRpm, BIT_RANGES.markedMaxRpm),
  ];
  const single = [...own, ...faultsUnder("/form", formFaults(bit.form))];
  return single.length > 0 ? single : unlikelyBitFaults(bit);
}

/**
 * Everything wrong with a form by itself: dimensions outside their range, then those that do not fit each other. Pointers start
 * at the form.
 * @example
 * formFaults({ kind: "cove", diameterMm: 20, radiusMm: 12 })[0].code // → "profile-too-large"
 */
export function formFaults(form: Form): Fault[] {
  const single = recordFaults("", form, formSummary(form.kind).dimensions, dimensionFaults);
  // How dimensions fit each other means nothing while one of them is impossible by itself.
  return single.length > 0 ? single : withoutContradictions(formFitFaults(form), formSummary(form.kind));
}

function dimensionFaults(pointer: string, given: unknown, spec: DimensionSpec): Fault[] {
  if (spec.type !== "segments") return fieldFaults(pointer, given, spec);
  if (given === undefined && spec.optional) return [];
  const length = Array.isArray(given) ? given.length : 0;
  return rangeFaults(pointer, length, { min: 1, max: spec.most });
}
