import { type Fault, faultsUnder } from "../quantity/fault.ts";
import { rangeFaults } from "../quantity/range.ts";
import { BIT_RANGES, type Bit } from "./bit.ts";
import type { DimensionSpec } from "./form/define.ts";
import { type Form, formFitFaults, formSummary } from "./form/registry.ts";

/**
 * Everything wrong with a bit: fields outside their range, then dimensions that do not fit each other.
 * Pointers start at the bit. An empty list means the geometry has an answer.
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
  return [...own, ...faultsUnder("/form", formFaults(bit.form))];
}

/** Everything wrong with a form by itself. Pointers start at the form. */
export function formFaults(form: Form): Fault[] {
  const given: Readonly<Record<string, unknown>> = form;
  const single = Object.entries(formSummary(form.kind).dimensions).flatMap(([name, spec]) =>
    dimensionFaults(`/${name}`, given[name], spec),
  );
  // How dimensions fit each other means nothing while one of them is impossible by itself.
  return single.length > 0 ? single : formFitFaults(form);
}

function dimensionFaults(pointer: string, given: unknown, spec: DimensionSpec): Fault[] {
  if (given === undefined && spec.optional) return [];
  if (spec.type === "measure") {
    const isWhole = spec.unit !== "count" || Number.isInteger(given);
    return rangeFaults(pointer, typeof given === "number" && isWhole ? given : Number.NaN, spec);
  }
  if (spec.type === "segments") {
    const length = Array.isArray(given) ? given.length : 0;
    return rangeFaults(pointer, length, { min: 1, max: spec.most });
  }
  if (typeof given === "string" && spec.names.includes(given)) return [];
  return [{ pointer, code: "unknown-choice", values: { accepted: spec.names.join(", ") } }];
}
