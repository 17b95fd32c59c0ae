import { type Form, formOutline } from "./form/registry.ts";
import { edgeRadiusMm } from "./solid.ts";

/**
 * Greatest diameter in mm that a form cuts, for one that `formFaults` found nothing wrong with: twice the radius of its edges, without a
 * bearing that stands out past them.
 * @example
 * formDiameterMm({ kind: "cove", diameterMm: 38.1, radiusMm: 12.7 }) // → 38.1
 */
export function formDiameterMm(form: Form): number {
  return 2 * edgeRadiusMm(formOutline(form));
}
