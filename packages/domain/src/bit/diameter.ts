import { type Form, formOutline } from "./form/registry.ts";
import { rimRadiusMm } from "./solid.ts";

/**
 * Greatest diameter in mm of a form that `formFaults` found nothing wrong with: twice the radius of its rim.
 * @example
 * formDiameterMm({ kind: "cove", diameterMm: 38.1, radiusMm: 12.7 }) // → 38.1
 */
export function formDiameterMm(form: Form): number {
  return 2 * rimRadiusMm(formOutline(form));
}
