import { formOutline } from "../bit/form/registry.ts";
import { type Profile, profileAfterPasses } from "../bit/profile.ts";
import type { Cut } from "../cut/cut.ts";
import { cutSetup } from "../cut/setup.ts";
import type { Plan, PlanInput } from "./plan.ts";

/** Where only the depth of a cut is known, this much uncut work is shown beyond it, mm. Ours. */
const SHOWN_BEYOND_MM = 10;

/**
 * The cross-section of the work after each pass of a plan, in order; of a surface, after one row of each. Empty for a plan that
 * must not be run.
 */
export function planProfiles({ bit, cut }: PlanInput, { passes }: Plan): Profile[] {
  if (passes.length === 0) return [];
  const outline = formOutline(bit.form);
  const { sides, thicknessMm } = cutSetup(bit, outline, cut);
  const shownMm = thicknessMm + (isKnownByDepth(cut) ? SHOWN_BEYOND_MM : 0);
  const settings = passes.map(({ pass: { heightMm, fenceMm } }) => ({
    heightMm,
    fenceMm,
    thicknessMm: shownMm,
  }));
  return profileAfterPasses(outline, settings, { sides });
}

function isKnownByDepth({ kind }: Cut): boolean {
  return kind === "groove" || kind === "rabbet" || kind === "surface";
}
