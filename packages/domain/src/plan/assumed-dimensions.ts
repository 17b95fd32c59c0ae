import { USUAL_BACK_CUTTER_LENGTH_MM } from "../bit/form/cope.ts";
import { USUAL_BACK_CUTTER_HEIGHT_MM, USUAL_SHOULDER_HEIGHT_MM } from "../bit/form/panel-raising.ts";
import type { Form } from "../bit/form/registry.ts";
import { USUAL_ARBOR_DIAMETER_MM } from "../bit/form/slot-cutter.ts";

/** A part of a bit that was not measured and is taken as usual. */
export type AssumedDimension = {
  readonly code: "dimension-assumed";
  readonly dimension: "shoulder-height" | "back-cutter-height" | "back-cutter-length" | "arbor-diameter";
  readonly mm: number;
};

/** The parts of a form that decide its outline and were not given. */
export function assumedDimensions(form: Form): AssumedDimension[] {
  const found: AssumedDimension[] = [];
  const assume = (dimension: AssumedDimension["dimension"], given: number | undefined, mm: number) => {
    if (given === undefined) found.push({ code: "dimension-assumed", dimension, mm });
  };
  switch (form.kind) {
    case "panel-raising":
      assume("shoulder-height", form.shoulderHeightMm, USUAL_SHOULDER_HEIGHT_MM);
      if (form.backCutterDiameterMm !== undefined)
        assume("back-cutter-height", form.backCutterHeightMm, USUAL_BACK_CUTTER_HEIGHT_MM);
      break;
    case "cope":
      assume("back-cutter-length", form.backCutterLengthMm, USUAL_BACK_CUTTER_LENGTH_MM);
      break;
    case "slot-cutter":
      if (form.arborLengthMm !== undefined)
        assume("arbor-diameter", form.arborDiameterMm, USUAL_ARBOR_DIAMETER_MM);
      break;
  }
  return found;
}
