import { REACH_SLACK_MM } from "../cut/base-setup.ts";
import { cutSummary } from "../cut/kind/registry.ts";
import type { Pass } from "../cut/passes.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { Finding } from "./findings.ts";
import type { PlanInput } from "./plan.ts";

/**
 * What the twist of a spiral does: up-cut edges lift the fibres of the face by the router, down-cut edges press chips into the cut and
 * fibres out of the face they leave by, and a compression bit is clean only if its up-cut tip is past the face it enters. Source: common
 * practice.
 */
export function spiralFindings(
  { bit: { form }, wood, mounting, cut }: PlanInput,
  setup: CutSetup,
  passes: readonly Pass[] = [],
): Finding[] {
  switch (form.kind) {
    case "spiral-up-cut":
      return wood.hasGrain ? [{ code: "frays-near-face", severity: "note", mounting }] : [];
    case "spiral-down-cut":
      return [
        ...(setup.sides === 2 ? [{ code: "chips-packed", severity: "note" } as const] : []),
        ...(wood.hasGrain && goesThrough(cut, setup)
          ? [{ code: "frays-far-face", severity: "note", mounting } as const]
          : []),
      ];
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

/** Whether the bit comes out of the face away from the router: a groove and a rabbet leave wood there. */
function goesThrough({ kind }: PlanInput["cut"], { heightMm, thicknessMm }: CutSetup): boolean {
  return "thicknessMm" in cutSummary(kind).fields && heightMm >= thicknessMm - REACH_SLACK_MM;
}
