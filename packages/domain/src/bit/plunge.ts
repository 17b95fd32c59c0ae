import type { Bit } from "./bit.ts";
import { formSummary } from "./form/registry.ts";

/** Whether a bit may be plunged into wood. Not known counts as not. */
export type Plunge = "plunges" | "does-not-plunge" | "not-known";

/**
 * Whether a bit may be plunged: only one that cuts at its end. Of some forms every bit does or none does; of the others the bit itself must
 * say it. Source: common practice.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * plungeOf(bit) // → "not-known"
 * plungeOf({ ...bit, isEndCutting: true }) // → "plunges"
 */
export function plungeOf({ form, isEndCutting }: Pick<Bit, "form" | "isEndCutting">): Plunge {
  const { plunges } = formSummary(form.kind);
  if (plunges === "never" || isEndCutting === false) return "does-not-plunge";
  return plunges === "always" || isEndCutting === true ? "plunges" : "not-known";
}

/** Whether it goes into the work at a hole of its own and leaves through it: nothing can be taken out before. Source: common practice. */
export function entersOwnHole({ form }: Pick<Bit, "form">): boolean {
  return form.kind === "keyhole";
}
