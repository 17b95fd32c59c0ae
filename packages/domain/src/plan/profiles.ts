import { formOutline } from "../bit/form/registry.ts";
import { type Profile, profileAfterPasses } from "../bit/profile.ts";
import type { Plan, PlanInput } from "./plan.ts";
import { planSections } from "./sections.ts";

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
export function planProfiles(input: PlanInput, plan: Plan): Profile[] {
  const sections = planSections(input, plan);
  if (sections === undefined) return [];
  return profileAfterPasses(formOutline(input.bit.form), sections.settings, { sides: sections.sides });
}
