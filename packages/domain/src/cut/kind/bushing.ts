import { optionalLengthMm } from "../../quantity/field.ts";
import type { BaseSetup, SetupAssumption } from "../base-setup.ts";
import { ASSUMED_TEMPLATE_THICKNESS_MM, templateThicknessMm } from "./work-fields.ts";

/** Outside diameter of a guide bushing, mm. */
export const BUSHING_RANGE_MM = { min: 5, max: 100 } as const;

/** What a cut that a bushing may lead along a template says of both. */
export const bushingFields = {
  bushingDiameterMm: optionalLengthMm(
    "Outside diameter of the guide bushing that runs along a template. Given, it is what guides the cut.",
    BUSHING_RANGE_MM.min,
    BUSHING_RANGE_MM.max,
  ),
  templateThicknessMm,
};

type Given = { readonly bushingDiameterMm?: number; readonly templateThicknessMm?: number };

type Along = { readonly assumed?: readonly SetupAssumption[]; readonly cutsThrough?: boolean };

/** With a bushing the template lies between base and work, and the bit reaches through it. Nothing of it without one. */
export function bushingSetup(
  { bushingDiameterMm: diameterMm, templateThicknessMm: given }: Given,
  { assumed = [], cutsThrough = false }: Along = {},
): Pick<BaseSetup, "bushing" | "underlayMm" | "assumed"> {
  if (diameterMm === undefined) return { assumed };
  const thicknessMm = given ?? ASSUMED_TEMPLATE_THICKNESS_MM;
  return {
    underlayMm: thicknessMm,
    bushing: { diameterMm, templateThicknessMm: thicknessMm, cutsThrough },
    assumed: given === undefined ? [...assumed, { code: "template-assumed", thicknessMm }] : assumed,
  };
}
