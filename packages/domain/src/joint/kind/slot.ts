import type { Bit } from "../../bit/bit.ts";
import { formMiddleMm } from "../../bit/form/registry.ts";
import type { BitSetting } from "../../bit/section.ts";
import { fenceForReachMm, formOf } from "./define.ts";

/** The bits that groove an edge at its middle. */
export const GROOVERS = ["groove", "slot-cutter"] as const;

/** How deep a slot is that nothing else decides, mm: 3/8 in. Source: common practice. */
const USUAL_SLOT_MM = 9.525;

/** How deep a groover cuts: what it is made for, or with a slot cutter what is asked. */
export function slotDepthMm(bit: Bit, askedMm: number | undefined): number {
  const form = formOf(bit, 0, GROOVERS);
  return form.kind === "groove" ? form.grooveDepthMm : (askedMm ?? USUAL_SLOT_MM);
}

/** How wide a groover cuts. */
export function slotWidthMm(bit: Bit): number {
  const form = formOf(bit, 0, GROOVERS);
  return form.kind === "groove" ? form.grooveWidthMm : form.slotWidthMm;
}

/** A groover with the middle of its groove at this height. */
export function slotSetting(bit: Bit, middleMm: number, thicknessMm: number, depthMm: number): BitSetting {
  return {
    heightMm: middleMm + (formMiddleMm(bit.form) ?? 0),
    fenceMm: fenceForReachMm(bit, depthMm),
    thicknessMm,
  };
}
