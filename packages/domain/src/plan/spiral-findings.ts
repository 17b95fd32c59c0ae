import type { Pass } from "../cut/passes.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { Finding } from "./findings.ts";
import type { PlanInput } from "./plan.ts";

/**
 * What the twist of a spiral does: up-cut edges lift the fibres of the face by the router, down-cut edges press chips into the cut,
 * and a compression bit is clean only if its up-cut tip is past the face it enters. Source: common practice.
 */
export function spiralFindings(
  { bit: { form }, wood, mounting }: PlanInput,
  { sides }: CutSetup,
  passes: readonly Pass[] = [],
): Finding[] {
  switch (form.kind) {
    case "spiral-up-cut":
      return wood.hasGrain ? [{ code: "frays-near-face", severity: "note", mounting }] : [];
    case "spiral-down-cut":
      return sides === 2 ? [{ code: "chips-packed", severity: "note" }] : [];
    case "spiral-compression": {
      const { upCutLengthMm } = form;
      if (upCutLengthMm === undefined) return [{ code: "compression-unknown", severity: "note", mounting }];
      const [first] = passes;
      if (first === undefined || first.heightMm > upCutLengthMm) return [];
      const { heightMm } = first;
      return [{ code: "compression-shallow", severity: "note", mounting, heightMm, upCutLengthMm }];
    }
    default:
      return [];
  }
}
