import type { Bounds, Fault } from "../quantity/fault.ts";
import type { Range } from "../quantity/range.ts";
import { GIVEN_SEGMENT_RANGES } from "./form/given-segment.ts";
import type { FormSummary } from "./form/registry.ts";

const SEGMENT_FIELD = /^\/segments\/\d+\/(\w+)$/;

/**
 * The same faults, but for those that would accept only what the field's own range refuses: whatever is given there, the rest of the
 * form is what must change.
 */
export function withoutContradictions(faults: readonly Fault[], { dimensions }: FormSummary): Fault[] {
  return faults.map((fault) => {
    const { pointer } = fault;
    const own = rangeAt(pointer, dimensions);
    const accepted = acceptedBy(fault);
    if (own === undefined || accepted === undefined || overlap(own, accepted)) return fault;
    return { pointer, code: "no-value-fits", values: { min: own.min, max: own.max } };
  });
}

/** The range of a measure, or of a measure of a given segment. */
function rangeAt(pointer: string, dimensions: FormSummary["dimensions"]): Range | undefined {
  const [, field] = SEGMENT_FIELD.exec(pointer) ?? [];
  if (field !== undefined) return Object.entries(GIVEN_SEGMENT_RANGES).find(([name]) => name === field)?.[1];
  const spec = dimensions[pointer.slice(1)];
  return spec?.type === "measure" ? spec : undefined;
}

/** What a fault says would fit, for those that name a bound. */
function acceptedBy(fault: Fault): Bounds | undefined {
  switch (fault.code) {
    case "out-of-range":
    case "profile-too-large":
      return fault.values;
    case "pilot-too-large":
      return { below: fault.values.diameterMm };
    case "diameter-not-outline":
      return { min: fault.values.want, max: fault.values.want };
    default:
      return undefined;
  }
}

function overlap({ min, max }: Range, bounds: Bounds): boolean {
  if ("below" in bounds) return bounds.below > min;
  if ("above" in bounds) return Number(bounds.above) < max;
  const least = "min" in bounds ? bounds.min : -Infinity;
  const most = "max" in bounds ? bounds.max : Infinity;
  return least <= max && most >= min;
}
