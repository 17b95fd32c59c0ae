import { formPilotRadiusMm } from "../bit/form/registry.ts";
import { definePrecaution } from "./define.ts";

/** A bearing that sticks burns the work, one whose screw is loose comes off. Source: common practice. */
export const bearingTurns = definePrecaution({
  code: "bearing-turns",
  applies: ({ bit }) => (formPilotRadiusMm(bit.form) === undefined ? undefined : {}),
});
