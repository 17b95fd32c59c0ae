import { type Form, formOutline } from "./form/registry.ts";
import { rimRadiusMm } from "./solid.ts";

/** Greatest diameter in mm of a form that `formFaults` found nothing wrong with: twice the radius of its rim. */
export function formDiameterMm(form: Form): number {
  return 2 * rimRadiusMm(formOutline(form));
}
