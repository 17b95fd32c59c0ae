import type { Outline } from "../bit/outline.ts";
import { engagedDepthMm, widthAtTableMm, widthAtTopMm } from "../bit/section.ts";
import { type ConstraintContext, type ConstraintUse, sectionMaxMm2 } from "./constraints.ts";
import {
  type FoundPass,
  fewestPasses,
  found,
  LEAST_BITE_MM,
  PASSES_MAX,
  type Roughing,
  sharedOut,
} from "./fewest-passes.ts";
import { invertRising } from "./invert.ts";
import type { Load } from "./load.ts";
import type { PassGeometry } from "./pass-geometry.ts";
import { wholeFenceMm } from "./runs.ts";
import { type CutSetup, sectionMm2, settingShortOfEnd, standingOut } from "./setup.ts";
import { heavierShortMm, lighterShortMm } from "./short-of-end.ts";

/** One pass: where to set the bit, what it removes, and what that costs. */
export type Pass = {
  readonly number: number;
  readonly kind: "back-rout" | "rough" | "finish";
  /** How far the bit stands out of the table or base, and how much of that is its cutter, without a bearing on the tip. */
  readonly heightMm: number;
  readonly cutterMm: number;
  readonly fenceMm: number;
  /** How many runs side by side, of a cut that is wider than the bit. */
  readonly runs?: number;
  /** Of a groove that is wider than the bit: how far its last run lies over from the first. */
  readonly lastRunOverMm?: number;
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

/** A finishing pass takes at most this share of the lightest roughing pass, in bite and in section. Ours. */
const FINISH_SHARE_MAX = 0.75;

/**
 * The passes of a cut: the fewest roughing passes within every constraint, sharing the load equally, then a light
 * finishing pass, if one can be lighter than they are. Setting up a pass takes longer than a slower feed costs, so the fewest passes are the fastest. Equal
 * sections are taken if they are light enough; else passes of equal heaviness. Every setting but the last is one a person can
 * make, on the lighter side. A cut no deeper than the finishing bite is that one pass. Undefined if no number of passes is light enough.
 */
export function findPasses(context: ConstraintContext): readonly Pass[] | undefined {
  const backRout = context.climbs === "first" ? backRoutPass(context) : undefined;
  if (backRout === undefined) return mainPasses(context, context.setup.travelMm, 0);
  const main = mainPasses(context, backRout.pass.beforeEndMm, 1);
  return main && [asPass(context.setup, backRout, 1, "back-rout"), ...main];
}

/** Whether any number of passes makes the cut: what `findPasses` finds out with far more work. */
export function canBeCut(context: ConstraintContext): boolean {
  const { setup } = context;
  if (setup.approach === "once") return onlyPass(context, setup.travelMm, 1, "rough") !== undefined;
  return fewestPasses(context, { startMm: setup.travelMm, finishBiteMm: 0 }) !== undefined;
}

/** A light pass with the rotation before the others, so that they do not tear; undefined if the cut is no deeper than it. */
function backRoutPass(context: ConstraintContext): FoundPass | undefined {
  const { setup, policy, setIn } = context;
  if (setup.approach === "once") return undefined;
  const toMm = lighterShortMm(setup, setup.travelMm - policy.climbBiteMaxMm, setIn);
  if (toMm < policy.finishBiteMm || setup.travelMm - toMm < LEAST_BITE_MM) return undefined;
  const pass = found(context, setup.travelMm, toMm);
  return pass.loaded.heaviness <= 1 ? pass : undefined;
}

/** The passes from how far short of the end the setting is, mm, after so many others. */
function mainPasses(
  context: ConstraintContext,
  travelMm: number,
  passesBefore: number,
): readonly Pass[] | undefined {
  const { setup, policy } = context;
  if (setup.approach === "once") return onlyPass(context, travelMm, passesBefore + 1, "rough");
  if (!(travelMm > policy.finishBiteMm)) {
    const only = onlyPass(context, travelMm, passesBefore + 1, "finish");
    if (only !== undefined) return only;
  }
  let finishBiteMm = Math.min(policy.finishBiteMm, travelMm);
  for (let tries = 0; tries <= HALVINGS_MAX; tries += 1, finishBiteMm /= 2) {
    const finish = finishWithin(context, finishBiteMm);
    if (finish === undefined) continue;
    const rough = roughTo(context, { startMm: travelMm, finishBiteMm: finish.pass.biteMm });
    if (rough === undefined) return undefined;
    if (rough.every(({ pass }) => isLighter(finish.pass, pass))) {
      return [
        ...rough.map((pass, index) => asPass(setup, pass, passesBefore + index + 1, "rough")),
        asPass(setup, finish, passesBefore + rough.length + 1, "finish"),
      ];
    }
  }
  return roughTo(context, { startMm: travelMm, finishBiteMm: 0 })?.map((pass, index) =>
    asPass(setup, pass, passesBefore + index + 1, "rough"),
  );
}

/** The whole cut in one pass, if it is light enough. What is made at its one setting takes all of the wood: it is no light finish. */
function onlyPass(
  context: ConstraintContext,
  travelMm: number,
  number: number,
  kind: Pass["kind"],
): readonly Pass[] | undefined {
  const only = found(context, travelMm, 0);
  return only.loaded.heaviness <= 1 ? [asPass(context.setup, only, number, kind)] : undefined;
}

/** The finishing pass from the last setting a person can make within this bite; undefined if there is none or it is too heavy. */
function finishWithin(context: ConstraintContext, biteMm: number): FoundPass | undefined {
  const fromMm = heavierShortMm(context.setup, biteMm, context.setIn);
  if (fromMm < LEAST_BITE_MM) return undefined;
  const finish = found(context, fromMm, 0);
  return finish.loaded.heaviness <= 1 ? finish : undefined;
}

function isLighter(finish: PassGeometry, rough: PassGeometry): boolean {
  return (
    finish.biteMm <= FINISH_SHARE_MAX * rough.biteMm &&
    finish.removedAreaMm2 <= FINISH_SHARE_MAX * rough.removedAreaMm2
  );
}

/** The fewest roughing passes that take a stretch of the travel; none if there is nothing to take. */
function roughTo(context: ConstraintContext, travel: Roughing): readonly FoundPass[] | undefined {
  const { solid, setup, mounting, policy } = context;
  const { startMm, finishBiteMm } = travel;
  const roughMm2 = sectionMm2(solid.outline, setup, finishBiteMm) - sectionMm2(solid.outline, setup, startMm);
  if (startMm - finishBiteMm < LEAST_BITE_MM || roughMm2 <= SLACK_MM2) return [];
  // No fewer can carry the section, so the search starts there.
  const fewest = Math.max(1, Math.ceil(roughMm2 / sectionMaxMm2(mounting, policy) - SLACK_MM2));
  if (fewest > PASSES_MAX) return undefined;
  return equalSections(context, travel, fewest) ?? lightest(context, travel);
}

/** The fewest passes by all the constraints: of equal section if that will do, else of equal heaviness. */
function lightest(context: ConstraintContext, travel: Roughing): readonly FoundPass[] | undefined {
  const deepest = fewestPasses(context, travel);
  if (deepest === undefined) return undefined;
  const equal = (count: number) => equalSections(context, travel, count);
  // A last sliver may come only from how closely the depths were found: one pass fewer is tried too.
  return equal(deepest.length - 1) ?? equal(deepest.length) ?? sharedOut(context, travel, deepest);
}

/** `count` passes of equal section, as nearly as they can be set, if each is light enough. */
function equalSections(
  context: ConstraintContext,
  { startMm, finishBiteMm }: Roughing,
  count: number,
): FoundPass[] | undefined {
  if (count < 1) return undefined;
  const { solid, setup, setIn } = context;
  const startMm2 = sectionMm2(solid.outline, setup, startMm);
  const roughMm2 = sectionMm2(solid.outline, setup, finishBiteMm) - startMm2;
  const passes: FoundPass[] = [];
  let fromMm = startMm;
  for (let index = 1; index <= count; index += 1) {
    const targetMm2 = startMm2 + (roughMm2 * index) / count;
    const toMm =
      index === count
        ? finishBiteMm
        : lighterShortMm(setup, shortOfEndAtMm(solid.outline, setup, finishBiteMm, targetMm2), setIn);
    if (fromMm - toMm < LEAST_BITE_MM) return undefined;
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

function asPass(setup: CutSetup, { pass, loaded }: FoundPass, number: number, kind: Pass["kind"]): Pass {
  const { heightMm, fenceMm } = settingShortOfEnd(setup, pass.beforeEndMm);
  // The fence of the last run is where the cut ends.
  const endFenceMm = setup.runs?.by === "fence" ? wholeFenceMm(fenceMm, setup.runs) : fenceMm;
  const lastRunOverMm = setup.runs?.by === "move" ? setup.runs.overMm.at(-1) : undefined;
  return {
    number,
    kind,
    ...standingOut(setup, heightMm),
    fenceMm: endFenceMm,
    ...(setup.runs !== undefined && { runs: setup.rows }),
    ...(lastRunOverMm !== undefined && { lastRunOverMm }),
    geometry: pass,
    ...loaded,
  };
}
