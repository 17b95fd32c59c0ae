import {
  type BitSetting,
  formOutline,
  isUndercut,
  type Outline,
  outlineLengthMm,
  type Plan,
  type PlanInput,
  type PlanSections,
  type Profile,
  type ProfileView,
  planSections,
  profileAfter,
  profileAfterPasses,
  segmentSpanMm,
} from "@rimwise/domain";
import type { Standing } from "../../drafting/outline-path.ts";
import { MARGIN_MM, PAGE_WIDTH_MM } from "../../drafting/page.ts";
import { CHORD_MM } from "../../drafting/profile-contours.ts";
import { scaleFor } from "../../drafting/scale.ts";
import type { Frame } from "../../scene/frame.ts";

/** A plan as it is seen in section: x from the edge into the work, z from its face on the table or under the base. */
export type Section = {
  readonly input: PlanInput;
  readonly plan: Plan;
  readonly isTable: boolean;
  readonly outline: Outline;
  readonly sections: PlanSections;
  /** The work before the first pass and after each. */
  readonly profiles: readonly Profile[];
  readonly standing: Standing;
  readonly rimRadiusMm: number;
  /** How far the work is drawn to the left and to the right; it goes on to the right, of a groove on both sides. */
  readonly workMm: readonly [fromMm: number, toMm: number];
  /** The plane of the table or base, and how far up and down the drawing goes. */
  readonly planeMm: number;
  readonly highMm: number;
  readonly footMm: number;
  /** Of a template on the far face of the work. */
  readonly farTemplateMm: number;
};

/** Where a section lies on the page. */
export type SectionPlace = { readonly frame: Frame; readonly scale: number; readonly bottomMm: number };

/** Uncut work beside the cut, and shank below the head, mm in the world; room between the bit and the edge of the table. */
const LEAST_BESIDE_MM = 6;
const SHANK_SHOWN_MM = 9;
export const OPENING_MM = 2;

/** The room between the dimensions beside it, mm of paper. */
const BESIDE_MM = 22;
const MOST_HEIGHT_MM = 70;

/** The section of a plan that may be run; undefined of another. */
export function sectionOf(input: PlanInput, plan: Plan): Section | undefined {
  const sections = planSections(input, plan);
  const last = sections?.settings.at(-1);
  if (sections === undefined || last === undefined) return undefined;
  const outline = formOutline(input.bit.form);
  const { sides, settings, thicknessMm, underlayMm } = sections;
  const rimRadiusMm = outline.reduce((most, each) => Math.max(most, segmentSpanMm(each).greatestMm), 0);
  const lastOverMm = plan.passes.at(-1)?.pass.lastRunOverMm ?? 0;
  const axisMm = sides === 1 ? -last.fenceMm : lastOverMm / 2;
  const reachMm = Math.max(axisMm + rimRadiusMm, 0);
  const toMm = reachMm + Math.max(LEAST_BESIDE_MM, rimRadiusMm / 2);
  const view = { sides, toleranceMm: CHORD_MM, depthMm: toMm };
  // A setting that does not reach the work leaves it as it was.
  const untouched = { ...last, heightMm: 0 };
  const farTemplateMm = templateOnFarFaceMm(plan);
  const footMm = Math.min(last.heightMm - outlineLengthMm(outline), -underlayMm) - SHANK_SHOWN_MM;
  return {
    input,
    plan,
    isTable: plan.mounting.requested === "table",
    outline,
    sections,
    profiles: profilesOf(outline, [untouched, ...settings], view),
    standing: { axisMm, tipMm: last.heightMm, shankToward: -1 },
    rimRadiusMm,
    workMm: [sides === 1 ? 0 : -toMm, toMm],
    planeMm: -underlayMm,
    highMm: Math.max(thicknessMm + farTemplateMm, last.heightMm),
    footMm,
    farTemplateMm,
  };
}

/** The section under `topMm`: the table below the work, or the base above it. */
export function placeOf(section: Section, topMm: number): SectionPlace {
  const { standing, rimRadiusMm, workMm, highMm, footMm, isTable } = section;
  const leftMm = Math.min(workMm[0], standing.axisMm - rimRadiusMm - OPENING_MM) - LEAST_BESIDE_MM;
  const widthMm = workMm[1] - leftMm;
  const heightMm = highMm - footMm;
  const scale = scaleFor(
    { widthMm, heightMm },
    { widthMm: PAGE_WIDTH_MM - 2 * (MARGIN_MM + BESIDE_MM), heightMm: MOST_HEIGHT_MM },
  );
  const middleMm = PAGE_WIDTH_MM / 2;
  const frame = {
    originXMm: middleMm - scale * (leftMm + widthMm / 2),
    originYMm: isTable ? topMm + scale * highMm : topMm - scale * footMm,
    scaleX: scale,
    scaleY: isTable ? -scale : scale,
  };
  return { frame, scale, bottomMm: topMm + scale * heightMm };
}

/** How far the table or base and the guide are drawn to the left, in the world. */
export function leftEndMm({ workMm, standing, rimRadiusMm }: Section): number {
  return Math.min(workMm[0], standing.axisMm - rimRadiusMm - OPENING_MM) - LEAST_BESIDE_MM;
}

/** The work after each setting. Each pass of a bit that only widens takes all that the ones before it took: it needs no summing up. */
function profilesOf(outline: Outline, settings: readonly BitSetting[], view: ProfileView): Profile[] {
  if (isUndercut(outline)) return profileAfterPasses(outline, settings, view);
  return settings.map((setting) => profileAfter(outline, setting, view));
}

function templateOnFarFaceMm({ steps }: Plan): number {
  const step = steps.find((each) => each.code === "fix-template");
  return step?.bearing === "tip" ? step.templateThicknessMm : 0;
}
