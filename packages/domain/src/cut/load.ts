import type { Bit } from "../bit/bit.ts";
import { freshDepthMm } from "../bit/section.ts";
import { deflectionMm } from "../bit/shank.ts";
import type { BitSolid } from "../bit/solid.ts";
import type { Policy } from "../policy/policy.ts";
import { MM_PER_M } from "../quantity/units.ts";
import type { Router } from "../router/router.ts";
import type { Wood } from "../wood/wood.ts";
import { chipOf, chipThinningFactor } from "./chip.ts";
import { FORCE_BAND_FACTOR, specificCuttingForceNPerMm2 } from "./cutting-force.ts";
import type { PassGeometry } from "./pass-geometry.ts";
import { type CutSetup, settingShortOfEnd } from "./setup.ts";
import { greatestStressMPa, weakSections } from "./weakest-section.ts";

/** What a load is computed from, the same for every pass of a cut. */
export type LoadContext = {
  readonly bit: Bit;
  readonly solid: BitSolid;
  readonly router: Router;
  readonly wood: Wood;
  readonly grain: "end" | "long";
  readonly setup: CutSetup;
  readonly policy: Policy;
};

/** Forces of one pass at one feed per tooth, at the upper edge of their band: what must be borne. */
export type Load = {
  readonly feedPerToothMm: number;
  readonly immersionRatio: number;
  readonly chipMeanMm: number;
  readonly chipGreatestMm: number;
  /** How much faster it could be fed for the greatest chip of a half-immersed cut. */
  readonly chipThinningRatio: number;
  readonly specificForceNPerMm2: number;
  readonly peakForceN: number;
  readonly torqueNm: number;
  readonly shankStressMPa: number;
  /** How far the peak force bends the edge aside. */
  readonly shankDeflectionMm: number;
};

/**
 * The load of a pass. Mean torque M = k·A·z·f_z/2π does not depend on the speed: at a given advance per tooth every
 * turn removes the same wood. Peak force is the specific force on the greatest chip over the depth of fresh wood.
 */
export function loadOf(context: LoadContext, pass: PassGeometry, feedPerToothMm: number): Load {
  const { bit, wood, grain } = context;
  const depthMm = freshDepth(context, pass);
  const immersionRatio = Math.min(1, pass.removedAreaMm2 / (depthMm * 2 * pass.greatestRadiusMm));
  const chip = chipOf(feedPerToothMm, immersionRatio);
  const specific = FORCE_BAND_FACTOR * specificCuttingForceNPerMm2(wood, chip.meanMm, grain);
  const peakForceN = specific * depthMm * chip.greatestMm;
  const meanTorqueNm =
    (specific * pass.removedAreaMm2 * bit.wings * feedPerToothMm) / (2 * Math.PI * MM_PER_M);
  return {
    feedPerToothMm,
    immersionRatio,
    chipMeanMm: chip.meanMm,
    chipGreatestMm: chip.greatestMm,
    chipThinningRatio: chipThinningFactor(immersionRatio),
    specificForceNPerMm2: specific,
    peakForceN,
    torqueNm: meanTorqueNm,
    shankStressMPa: shankStressMPa(context, peakForceN, pass.greatestRadiusMm),
    shankDeflectionMm: deflectionMm(
      { shankDiameterMm: bit.shankDiameterMm, lengthMm: cuttingArmMm(context) },
      peakForceN,
    ),
  };
}

/** Length along the axis over which a tooth meets fresh wood. A groove cut at once meets it all the way up. */
function freshDepth({ solid, setup }: LoadContext, pass: PassGeometry): number {
  const { approach, heightMm, sides } = setup;
  if (sides === 2) return approach === "once" ? heightMm : pass.biteMm;
  const setting = settingShortOfEnd(setup, pass.beforeEndMm);
  return freshDepthMm(solid.outline, setting, approach === "height" ? "height" : "fence", pass.biteMm);
}

/** Distance in mm from the collet face to the part of the edge that is farthest from it. */
export function cuttingArmMm({
  bit,
  setup,
  policy,
  solid,
}: Pick<LoadContext, "bit" | "setup" | "policy" | "solid">): number {
  const headMm = (solid.outline.at(-1)?.toMm ?? 0) - setup.contactMm;
  return (bit.stickOutMm ?? policy.stickOutAssumedMm) + headMm;
}

function shankStressMPa(context: LoadContext, forceN: number, radiusMm: number): number {
  const { bit, solid, setup, policy } = context;
  const stickOutMm = bit.stickOutMm ?? policy.stickOutAssumedMm;
  return greatestStressMPa(weakSections(bit, solid, setup.contactMm, stickOutMm), forceN, radiusMm);
}
