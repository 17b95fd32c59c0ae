import type { Outline } from "../bit/outline.ts";
import { engagedDepthMm, engagedWidthMm, widthAtTableMm, widthAtTopMm } from "../bit/section.ts";
import type { Policy } from "../policy/policy.ts";
import type { Mounting } from "../router/mounting.ts";
import { invertRising } from "./invert.ts";
import { type CutSetup, sectionMm2, settingShortOfEnd } from "./setup.ts";

/** One pass, as geometry. */
export type Pass = {
  readonly number: number;
  readonly kind: "rough" | "finish";
  readonly heightMm: number;
  readonly fenceMm: number;
  /** How far the setting moved since the pass before, mm. */
  readonly biteMm: number;
  /** Section of wood this pass removes. */
  readonly removedAreaMm2: number;
  /** Extent of the cut square to the direction the setting moves. */
  readonly engagedMm: number;
};

/** More passes than this is the wrong bit for the job. Ours. */
const PASSES_MAX = 40;

/** Sections are compared with this much slack, mm²: the inversion's own error. */
const SLACK_MM2 = 1e-9;

/**
 * The passes of a cut: the fewest roughing passes of equal section that stay within the policy's section, its
 * width times bite and (for a groove) its depth per pass; then a light finishing pass. A cut no
 * deeper than the finishing bite is that one pass. Undefined where not even many passes are light enough.
 */
export function findPasses(
  outline: Outline,
  setup: CutSetup,
  mounting: Mounting,
  policy: Policy,
): readonly Pass[] | undefined {
  const wholeMm2 = sectionMm2(outline, setup, 0);
  const finishBiteMm = Math.min(policy.finishBiteMm, setup.travelMm);
  const roughMm2 = sectionMm2(outline, setup, finishBiteMm);
  const finish = describe(outline, setup, finishBiteMm, 0, wholeMm2 - roughMm2);
  if (!(setup.travelMm > finishBiteMm) || roughMm2 <= SLACK_MM2)
    return [{ number: 1, kind: "finish", ...finish }];
  // No fewer can carry the section, so the search starts there.
  const fewest = Math.max(1, Math.ceil(roughMm2 / sectionMaxMm2(mounting, policy) - SLACK_MM2));
  for (let count = fewest; count <= PASSES_MAX; count += 1) {
    const rough = equalPasses(outline, setup, finishBiteMm, roughMm2, count);
    if ([...rough, finish].every((pass) => isLightEnough(pass, setup, outline, mounting, policy))) {
      const passes = rough.map((pass, index) => ({ number: index + 1, kind: "rough" as const, ...pass }));
      return [...passes, { number: count + 1, kind: "finish", ...finish }];
    }
  }
  return undefined;
}

type Step = Omit<Pass, "number" | "kind">;

/** `count` steps of equal section from first contact to the finishing allowance. */
function equalPasses(
  outline: Outline,
  setup: CutSetup,
  finishBiteMm: number,
  roughMm2: number,
  count: number,
): Step[] {
  const steps: Step[] = [];
  let fromMm = setup.travelMm;
  let doneMm2 = 0;
  for (let index = 1; index <= count; index += 1) {
    const targetMm2 = (roughMm2 * index) / count;
    const toMm = index === count ? finishBiteMm : shortOfEndAtMm(outline, setup, finishBiteMm, targetMm2);
    const sumMm2 = index === count ? roughMm2 : sectionMm2(outline, setup, toMm);
    steps.push(describe(outline, setup, fromMm, toMm, sumMm2 - doneMm2));
    fromMm = toMm;
    doneMm2 = sumMm2;
  }
  return steps;
}

/** How far short of the end the setting is when `targetMm2` has been removed. */
function shortOfEndAtMm(outline: Outline, setup: CutSetup, finishBiteMm: number, targetMm2: number): number {
  const advancedMm = invertRising(
    (advanced) => {
      const beforeEndMm = setup.travelMm - advanced;
      return {
        value: sectionMm2(outline, setup, beforeEndMm),
        slope: setup.sides * sectionSlopeMm(outline, setup, beforeEndMm),
      };
    },
    0,
    setup.travelMm - finishBiteMm,
    targetMm2,
  );
  return setup.travelMm - advancedMm;
}

function describe(
  outline: Outline,
  setup: CutSetup,
  fromMm: number,
  toMm: number,
  removedAreaMm2: number,
): Step {
  const { heightMm, fenceMm } = settingShortOfEnd(setup, toMm);
  return {
    heightMm,
    fenceMm,
    biteMm: fromMm - toMm,
    removedAreaMm2,
    engagedMm: setup.sides * engagedMm(outline, setup, toMm),
  };
}

function engagedMm(outline: Outline, setup: CutSetup, beforeEndMm: number): number {
  const setting = settingShortOfEnd(setup, beforeEndMm);
  return setup.approach === "height" ? engagedWidthMm(outline, setting) : engagedDepthMm(outline, setting);
}

/** How fast the section grows with the setting: the width of wood at the face that moves. */
function sectionSlopeMm(outline: Outline, setup: CutSetup, beforeEndMm: number): number {
  const setting = settingShortOfEnd(setup, beforeEndMm);
  return setup.approach === "height"
    ? widthAtTableMm(outline, setting) - widthAtTopMm(outline, setting)
    : engagedDepthMm(outline, setting);
}

function sectionMaxMm2(mounting: Mounting, policy: Policy): number {
  return mounting === "table" ? policy.passSectionMaxMm2 : policy.handheldPassSectionMaxMm2;
}

function isLightEnough(
  pass: Step,
  setup: CutSetup,
  outline: Outline,
  mounting: Mounting,
  policy: Policy,
): boolean {
  const productMaxMm2 =
    mounting === "table" ? policy.passWidthTimesBiteMaxMm2 : policy.handheldPassWidthTimesBiteMaxMm2;
  if (pass.removedAreaMm2 > sectionMaxMm2(mounting, policy) + SLACK_MM2) return false;
  if (pass.engagedMm * pass.biteMm > productMaxMm2 + SLACK_MM2) return false;
  if (setup.sides === 1) return true;
  const diameterMm = engagedWidthMm(outline, settingShortOfEnd(setup, 0)) * 2;
  return pass.biteMm <= policy.grooveDepthPerDiameterMaxRatio * diameterMm + SLACK_MM2;
}
