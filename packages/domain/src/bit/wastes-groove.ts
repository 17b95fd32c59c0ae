import type { Bit } from "./bit.ts";
import { formOutline, formPilotRadiusMm, formSummary } from "./form/registry.ts";
import { isParallel } from "./shape.ts";
import { rimRadiusMm } from "./solid.ts";

/**
 * Width in mm of the groove that a bit takes the wood out of before another one finishes it: a plain cylinder's own diameter. Undefined for
 * a bit that cuts no plain groove. For a bit that `bitFaults` found nothing wrong with. Source: common practice.
 * @example
 * wastesGrooveMm({ form: { kind: "straight", diameterMm: 8, cuttingLengthMm: 25 } }) // → 8
 */
export function wastesGrooveMm({ form }: Pick<Bit, "form">): number | undefined {
  const outline = formOutline(form);
  const isPlain = isParallel(outline) && outline.every(({ role }) => role === "edge");
  if (!isPlain || formPilotRadiusMm(form) !== undefined) return undefined;
  return formSummary(form.kind).suits.includes("groove") ? 2 * rimRadiusMm(outline) : undefined;
}
