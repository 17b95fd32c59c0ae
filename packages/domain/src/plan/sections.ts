import { formOutline } from "../bit/form/registry.ts";
import { edgesFromMm } from "../bit/outline.ts";
import type { BitSetting } from "../bit/section.ts";
import { cutSummary } from "../cut/kind/registry.ts";
import { wholeFenceMm } from "../cut/runs.ts";
import { cutSetup, settingShortOfEnd } from "../cut/setup.ts";
import type { Plan, PlanInput } from "./plan.ts";

/** If only the depth of a cut is known, this much uncut work is shown beyond it, mm. Ours. */
const SHOWN_BEYOND_MM = 10;

/** How bit and work stand to each other in a section square to the feed: x from the edge into the work, z from its face on the table or under the base. */
export type PlanSections = {
  /** An edge is cut on one side of x = 0, a groove on both alike. */
  readonly sides: 1 | 2;
  /** How thick the work is, or as much of it as is shown if only the depth of the cut is known. */
  readonly thicknessMm: number;
  /** Whether the work is as thick as that, and not thicker. */
  readonly isWholeThickness: boolean;
  /** What lies between the work and the table or base, such as a template. */
  readonly underlayMm: number;
  /** From the tip to where the edges begin: the height of a bearing on the tip, else 0. */
  readonly edgesFromMm: number;
  /** One for each pass: the one setting that would leave what the pass and all its runs leave. */
  readonly settings: readonly BitSetting[];
};

/**
 * The settings of a plan's passes as sections: what a drawing and the work's cross-section are made from. None for a plan that must not be
 * run.
 * @example
 * const input = {
 *   bit: { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 },
 *   router: { minRpm: 10_000, maxRpm: 20_000, dial: { marks: { first: 1, last: 5 } }, inputPowerW: 1600 },
 *   mounting: "table",
 *   wood: woodById("black-cherry"),
 *   cut: { kind: "groove", depthMm: 6, edges: [{ lengthMm: 600, grain: "long" }] },
 *   policy: DEFAULT_POLICY,
 * };
 * const sections = planSections(input, makePlan(input));
 * sections?.settings.at(-1) // → { heightMm: 6, fenceMm: 0, thicknessMm: 16 }
 */
export function planSections({ bit, cut }: PlanInput, { passes }: Plan): PlanSections | undefined {
  if (passes.length === 0) return undefined;
  const outline = formOutline(bit.form);
  const setup = cutSetup(bit, outline, cut);
  const isWholeThickness = "thicknessMm" in cutSummary(cut.kind).fields;
  const thicknessMm = setup.thicknessMm + (isWholeThickness ? 0 : SHOWN_BEYOND_MM);
  const settings = passes.map(({ pass: { geometry } }) => {
    const { heightMm, fenceMm } = settingShortOfEnd(setup, geometry.beforeEndMm);
    return { heightMm, fenceMm: wholeFenceMm(fenceMm, setup.runs), thicknessMm };
  });
  return {
    sides: setup.sides,
    thicknessMm,
    isWholeThickness,
    underlayMm: setup.underlayMm ?? 0,
    edgesFromMm: edgesFromMm(outline),
    settings,
  };
}
