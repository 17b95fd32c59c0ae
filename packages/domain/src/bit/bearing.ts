import type { Fault } from "../quantity/fault.ts";
import { MEASURED_SLACK_MM } from "./form/fit.ts";
import { type Form, formPilotRadiusMm, formSummary } from "./form/registry.ts";

/** The same form on the bearing that another had, if nothing says what it runs on: a bearing is not ground with its cutter. */
export function onSameBearing(form: Form, before: Form): Form {
  const pilotRadiusMm = formPilotRadiusMm(before);
  if (pilotRadiusMm === undefined) return form;
  const isOpen = "pilotDiameterMm" in formSummary(form.kind).dimensions && !("pilotDiameterMm" in form);
  const same: Form = { ...form, ...(isOpen && { pilotDiameterMm: 2 * pilotRadiusMm }) };
  return isSameBearing(same, before) ? groundDownToBearing(same, before) : same;
}

/** Two figures of the bearing that measuring alone may have told apart. */
function isSameBearing(form: Form, before: Form): boolean {
  const differenceMm = (formPilotRadiusMm(form) ?? 0) - (formPilotRadiusMm(before) ?? 0);
  return Math.abs(differenceMm) <= MEASURED_SLACK_MM;
}

/** A form whose cutter was ground: what reaches past a bearing between the cutters is the less for it. */
export function groundDownToBearing(form: Form, before: Form): Form {
  const pilotRadiusMm = formPilotRadiusMm(before);
  if (pilotRadiusMm === undefined) return form;
  const pastMm = form.diameterMm / 2 - pilotRadiusMm;
  if ("grooveDepthMm" in form) return { ...form, grooveDepthMm: pastMm };
  if ("tongueLengthMm" in form) return { ...form, tongueLengthMm: pastMm };
  return form;
}

/** A depth and a diameter that were measured and would make the bearing between the cutters smaller than it was. Pointers start at the form. */
export function shrunkBearingFaults(form: Form, before: Form): Fault[] {
  const beforeMm = formPilotRadiusMm(before);
  const afterMm = formPilotRadiusMm(form);
  if (beforeMm === undefined || afterMm === undefined || afterMm >= beforeMm - MEASURED_SLACK_MM) return [];
  const max = form.diameterMm / 2 - beforeMm;
  const tooMuch = (pointer: string, given: number): Fault[] => [
    { pointer, code: "out-of-range", values: { given, max } },
  ];
  if ("grooveDepthMm" in form) return tooMuch("/grooveDepthMm", form.grooveDepthMm);
  return "tongueLengthMm" in form ? tooMuch("/tongueLengthMm", form.tongueLengthMm) : [];
}
