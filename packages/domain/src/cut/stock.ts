import type { Bit } from "../bit/bit.ts";
import { formSummary } from "../bit/form/registry.ts";
import type { Outline } from "../bit/outline.ts";
import type { Fault } from "../quantity/fault.ts";
import type { Cut } from "./kind/registry.ts";

/**
 * Stock that a panel bit would cut through at this height, mm: its face reaches from the table up to its pilot, and what is above
 * is the tongue. Pointers start at the cut.
 */
export function stockFaults({ form }: Bit, outline: Outline, cut: Cut, heightMm: number): Fault[] {
  // On edge against a tall fence the thickness lies across the bit.
  if (cut.kind !== "panel" || formSummary(form.kind).work === "standing") return [];
  const given = cut.thicknessMm ?? cut.work?.thicknessMm;
  const above = heightMm - faceStartMm(outline);
  if (given === undefined || given > above) return [];
  return [{ pointer: "/thicknessMm", code: "stock-too-thin", values: { given, above } }];
}

/** Where the face of a panel bit begins, mm from the tip: past its pilot, beyond which a back-cutter may stand. */
function faceStartMm(outline: Outline): number {
  return outline.findLast(({ role }) => role === "pilot")?.toMm ?? 0;
}
