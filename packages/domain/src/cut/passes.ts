import type { Outline } from "../bit/outline.ts";
import { engagedDepthMm, widthAtTableMm, widthAtTopMm } from "../bit/section.ts";
import { type ConstraintContext, type ConstraintUse, loadedPass, sectionMaxMm2 } from "./constraints.ts";
import { type FoundPass, fewestPasses, PASSES_MAX, sharedOut } from "./fewest-passes.ts";
import { invertRising } from "./invert.ts";
import type { Load } from "./load.ts";
import { type PassGeometry, passBetween } from "./pass-geometry.ts";
import { type CutSetup, sectionMm2, settingShortOfEnd } from "./setup.ts";

/** One pass: where to set the bit, what it removes, and what that costs. */
export type Pass = {
  readonly number: number;
  readonly kind: "rough" | "finish";
  readonly heightMm: number;
  readonly fenceMm: number;
  readonly geometry: PassGeometry;
  readonly load: Load;
  /** How much of every constraint it uses. */
  readonly uses: readonly ConstraintUse[];
  /** How near it is to the heaviest pass allowed, 1 at the bound: see constraints.ts. */
  readonly heaviness: number;
};

/** Sections are compared with this much slack, mm²: the inversion's own error. */
const SLACK_MM2 = 1e-9;

/** A finishing bite is halved at most so often: 0.8 mm comes to 0.05 mm. Ours. */
const HALVINGS_MAX = 4;

/**
 * The passes of a cut: the fewest roughing passes within every constraint, sharing the load equally, then a light
 * finishing pass. Setting up a pass takes longer than a slower feed costs, so the fewest passes are the fastest. Equal
 * sections are taken if they are light enough; else passes of equal heaviness. A cut no deeper than the
 * finishing bite is that one pass. Undefined if no number of passes is light enough.
 */
export function findPasses(context: ConstraintContext): readonly Pass[] | undefined {
  const { solid, setup, mounting, policy } = context;
  const finishing = lightFinish(context);
  if (finishing === undefined) return undefined;
  const { finishBiteMm, finish } = finishing;
  const roughMm2 = sectionMm2(solid.outline, setup, finishBiteMm);
  if (!(setup.travelMm > finishBiteMm) || roughMm2 <= SLACK_MM2)
    return [asPass(setup, finish, 1, onlyKind(setup))];
  // No fewer can carry the section, so the search starts there.
  const fewest = Math.max(1, Math.ceil(roughMm2 / sectionMaxMm2(mounting, policy) - SLACK_MM2));
  if (fewest > PASSES_MAX) return undefined;
  const rough =
    equalSections(context, finishBiteMm, roughMm2, fewest) ?? lightest(context, finishBiteMm, roughMm2);
  if (rough === undefined) return undefined;
  const passes = rough.map((pass, index) => asPass(setup, pass, index + 1, "rough"));
  return [...passes, asPass(setup, finish, passes.length + 1, "finish")];
}

/** A cut that is made at its one setting takes all of the wood: it is no light finish. */
function onlyKind({ approach }: CutSetup): Pass["kind"] {
  return approach === "once" ? "rough" : "finish";
}

type Finishing = { readonly finishBiteMm: number; readonly finish: FoundPass };

/** The finishing pass: the policy's bite, halved until the shank and the motor bear it. What is made at its one setting is its own. */
function lightFinish(context: ConstraintContext): Finishing | undefined {
  const { setup, policy } = context;
  const once = setup.approach === "once";
  let finishBiteMm = once ? setup.travelMm : Math.min(policy.finishBiteMm, setup.travelMm);
  for (let tries = 0; tries <= (once ? 0 : HALVINGS_MAX); tries += 1) {
    const finish = found(context, finishBiteMm, 0);
    if (finish.loaded.heaviness <= 1) return { finishBiteMm, finish };
    finishBiteMm /= 2;
  }
  return undefined;
}

/** The fewest passes by all the constraints: of equal section if that will do, else of equal heaviness. */
function lightest(
  context: ConstraintContext,
  finishBiteMm: number,
  roughMm2: number,
): readonly FoundPass[] | undefined {
  const deepest = fewestPasses(context, finishBiteMm);
  if (deepest === undefined) return undefined;
  const equal = (count: number) => equalSections(context, finishBiteMm, roughMm2, count);
  // A last sliver may come only from how closely the depths were found: one pass fewer is tried too.
  return equal(deepest.length - 1) ?? equal(deepest.length) ?? sharedOut(context, finishBiteMm, deepest);
}

/** `count` passes of equal section, if each is light enough. */
function equalSections(
  context: ConstraintContext,
  finishBiteMm: number,
  roughMm2: number,
  count: number,
): FoundPass[] | undefined {
  if (count < 1) return undefined;
  const { solid, setup } = context;
  const passes: FoundPass[] = [];
  let fromMm = setup.travelMm;
  for (let index = 1; index <= count; index += 1) {
    const targetMm2 = (roughMm2 * index) / count;
    const toMm =
      index === count ? finishBiteMm : shortOfEndAtMm(solid.outline, setup, finishBiteMm, targetMm2);
    const next = found(context, fromMm, toMm);
    if (next.loaded.heaviness > 1) return undefined;
    passes.push(next);
    fromMm = toMm;
  }
  return passes;
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

/** How fast the section grows with the setting: the width of wood at the faces that move. */
function sectionSlopeMm(outline: Outline, setup: CutSetup, beforeEndMm: number): number {
  const setting = settingShortOfEnd(setup, beforeEndMm);
  return setup.approach === "height"
    ? widthAtTableMm(outline, setting) - widthAtTopMm(outline, setting)
    : engagedDepthMm(outline, setting);
}

function found(context: ConstraintContext, fromMm: number, toMm: number): FoundPass {
  const pass = passBetween(context.solid.outline, context.setup, fromMm, toMm);
  return { pass, loaded: loadedPass(context, pass) };
}

function asPass(setup: CutSetup, { pass, loaded }: FoundPass, number: number, kind: Pass["kind"]): Pass {
  const { heightMm, fenceMm } = settingShortOfEnd(setup, pass.beforeEndMm);
  // The bit reaches through what lies between the work and the table or base.
  const setMm = heightMm + (setup.underlayMm ?? 0);
  return { number, kind, heightMm: setMm, fenceMm, geometry: pass, ...loaded };
}
