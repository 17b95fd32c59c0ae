import { formOutline } from "../bit/form/registry.ts";
import { type Profile, profileAfterPasses } from "../bit/profile.ts";
import type { BitSetting } from "../bit/section.ts";
import { cutSummary } from "../cut/kind/registry.ts";
import { type Runs, wholeFenceMm } from "../cut/runs.ts";
import { cutSetup, settingShortOfEnd } from "../cut/setup.ts";
import type { Plan, PlanInput } from "./plan.ts";

/** If only the depth of a cut is known, this much uncut work is shown beyond it, mm. Ours. */
const SHOWN_BEYOND_MM = 10;

/**
 * The cross-section of the work after each pass of a plan, in order; of a surface, after one row of each. Empty for a plan that
 * must not be run.
 * @example
 * const input = {
 *   bit: { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 },
 *   router: { minRpm: 10_000, maxRpm: 20_000, dial: { marks: { first: 1, last: 5 } }, inputPowerW: 1600 },
 *   mounting: "table",
 *   wood: woodById("black-cherry"),
 *   cut: { kind: "groove", depthMm: 6, edges: [{ lengthMm: 600, grain: "long" }] },
 *   policy: DEFAULT_POLICY,
 * };
 * const plan = makePlan(input);
 * planProfiles(input, plan).length === plan.passes.length // → true
 */
export function planProfiles({ bit, cut }: PlanInput, { passes }: Plan): Profile[] {
  if (passes.length === 0) return [];
  const outline = formOutline(bit.form);
  const setup = cutSetup(bit, outline, cut);
  const { sides, thicknessMm, runs } = setup;
  const isKnownByDepth = !("thicknessMm" in cutSummary(cut.kind).fields);
  const shownMm = thicknessMm + (isKnownByDepth ? SHOWN_BEYOND_MM : 0);
  const settings = passes.map(({ pass: { geometry } }) => ({
    ...wholeSetting(settingShortOfEnd(setup, geometry.beforeEndMm), runs),
    thicknessMm: shownMm,
  }));
  return profileAfterPasses(outline, settings, { sides });
}

function wholeSetting(
  { heightMm, fenceMm }: BitSetting,
  runs: Runs | undefined,
): Omit<BitSetting, "thicknessMm"> {
  return { heightMm, fenceMm: wholeFenceMm(fenceMm, runs) };
}
