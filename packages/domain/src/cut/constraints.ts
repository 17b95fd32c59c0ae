import type { Policy } from "../policy/policy.ts";
import type { Mounting } from "../router/mounting.ts";
import { type Load, type LoadContext, loadOf } from "./load.ts";
import type { PassGeometry } from "./pass-geometry.ts";
import type { SetIn } from "./settable.ts";

/** What holds a pass back. */
export type ConstraintName =
  | "section"
  | "width-times-bite"
  | "groove-depth"
  | "tooth-force"
  | "motor-torque"
  | "shank-stress"
  | "slowest-feed"
  | "climb-bite";

/** How much of one constraint a pass uses: 1 is its bound. */
export type ConstraintUse = { readonly name: ConstraintName; readonly ratio: number };

export type ConstraintContext = LoadContext & {
  readonly mounting: Mounting;
  /** What settings are made by; undefined if any can be made. */
  readonly setIn?: SetIn;
  /** Every pass is fed with the rotation, or a light one before the others is. Default: none. */
  readonly climbs?: "all" | "first" | undefined;
};

/** A pass at the feed per tooth it is given. */
export type LoadedPass = {
  readonly load: Load;
  readonly uses: readonly ConstraintUse[];
  /**
   * The greatest use that grows with the depth of the pass: above 1 it is too heavy even at the slowest feed.
   */
  readonly heaviness: number;
};

/** Peak force, torque and stress rise with the feed per tooth to this power: k·h with k ∝ h^−0.4. */
const LOAD_EXPONENT = 0.6;

/** Relief lands just inside the bound, not a rounding error outside it. */
const RELIEF_SLACK = 1 + 1e-9;

/**
 * The pass at the fastest feed per tooth its loads allow: the policy's, or less if force, torque or stress ask for
 * it. Geometry cannot be relieved by a slower feed; load can, down to the slowest a hand may go.
 */
export function loadedPass(context: ConstraintContext, pass: PassGeometry): LoadedPass {
  const wantedMm = context.policy.feedPerToothMm;
  const geometry = geometryUses(context, pass);
  let load = loadOf(context, pass, wantedMm);
  let loads = loadUses(context, load);
  const heaviest = greatest(loads);
  if (heaviest > 1) {
    load = loadOf(context, pass, wantedMm * (heaviest * RELIEF_SLACK) ** (-1 / LOAD_EXPONENT));
    loads = loadUses(context, load);
  }
  const slowest = {
    name: "slowest-feed" as const,
    ratio: context.policy.feedPerToothMinMm / load.feedPerToothMm,
  };
  // A relieved load sits at its bound whatever the depth; how far the feed had to fall measures the depth.
  return {
    load,
    uses: [...geometry, ...loads, slowest],
    heaviness: Math.max(greatest(geometry), slowest.ratio),
  };
}

/** The uses of a pass whose load is another one than it was planned with. */
export function usesAtLoad(
  context: ConstraintContext,
  planned: readonly ConstraintUse[],
  load: Load,
): ConstraintUse[] {
  const loads = new Map(loadUses(context, load).map((use) => [use.name, use]));
  return planned.map((use) => loads.get(use.name) ?? use);
}

/** Largest section of one pass, mm². */
export function sectionMaxMm2(mounting: Mounting, policy: Policy): number {
  return mounting === "table" ? policy.passSectionMaxMm2 : policy.handheldPassSectionMaxMm2;
}

/**
 * Torque in N·m the motor gives: its output power at the fastest speed over that speed. Below it the speed control is
 * taken to hold this torque, not the power (assumption).
 */
export function motorTorqueNm(
  router: { readonly inputPowerW?: number; readonly maxRpm: number },
  policy: Pick<Policy, "inputPowerAssumedW" | "motorEfficiencyRatio">,
): number {
  const outputW = (router.inputPowerW ?? policy.inputPowerAssumedW) * policy.motorEfficiencyRatio;
  return outputW / ((router.maxRpm * 2 * Math.PI) / 60);
}

function geometryUses(
  { setup, mounting, policy, climbs }: ConstraintContext,
  pass: PassGeometry,
): ConstraintUse[] {
  const productMaxMm2 =
    mounting === "table" ? policy.passWidthTimesBiteMaxMm2 : policy.handheldPassWidthTimesBiteMaxMm2;
  const uses: ConstraintUse[] = [
    { name: "section", ratio: pass.removedAreaMm2 / sectionMaxMm2(mounting, policy) },
    { name: "width-times-bite", ratio: (pass.engagedMm * pass.biteMm) / productMaxMm2 },
  ];
  // A shop that allows no such bite at all is told so by a finding.
  if (climbs === "all" && policy.climbBiteMaxMm > 0) {
    uses.push({ name: "climb-bite", ratio: pass.biteMm / policy.climbBiteMaxMm });
  }
  if (setup.sides === 2 && setup.approach === "height") {
    const deepestMm = policy.grooveDepthPerDiameterMaxRatio * 2 * setup.greatestRadiusMm;
    uses.push({ name: "groove-depth", ratio: pass.biteMm / deepestMm });
  }
  return uses;
}

function loadUses({ router, mounting, policy }: ConstraintContext, load: Load): ConstraintUse[] {
  const forceMaxN = mounting === "table" ? policy.cutForceMaxN : policy.handheldCutForceMaxN;
  return [
    { name: "tooth-force", ratio: load.peakForceN / forceMaxN },
    { name: "motor-torque", ratio: load.torqueNm / motorTorqueNm(router, policy) },
    {
      name: "shank-stress",
      ratio: load.shankStressMPa / (policy.shankStressMaxMPa * policy.shankStressCuttingShareRatio),
    },
  ];
}

function greatest(uses: readonly ConstraintUse[]): number {
  let found = 0;
  for (const { ratio } of uses) if (ratio > found) found = ratio;
  return found;
}
