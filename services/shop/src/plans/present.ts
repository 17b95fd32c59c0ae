import {
  ADVICE,
  describeAssumption,
  describeFinding,
  describeGuide,
  describeLimit,
  describeMountingReason,
  describePrecaution,
  describeRaisedBy,
  describeStep,
  describeUncertainty,
  floorTo,
  M_PER_S_PER_MPH,
  type Plan,
  type PlannedPass,
  type PlannedSpeed,
  type Rotation,
  roundTo,
  type Show,
  showIn,
  type TestPiece,
  type Units,
  type Wood,
} from "@rimwise/domain";
import type { PlanAnswer } from "./answer-schema.ts";
import { DECIMALS, dialMark, rpm } from "./rounding.ts";
import type { Seal } from "./seal.ts";

/**
 * A plan as it goes over the wire: each quantity rounded to its meaningful decimals (speeds always down), each
 * finding with its sentence, and texts beside the numbers when units were asked for.
 */
export function presentPlan(
  plan: Plan,
  wood: Wood,
  seal: Seal,
  units: Exclude<Units, "both"> | undefined,
): PlanAnswer {
  const show = showIn(units ?? "both");
  return {
    verdict: plan.verdict,
    findings: plan.findings.map((finding) => ({
      code: finding.code,
      severity: finding.severity,
      text: describeFinding(finding, show),
    })),
    mounting: {
      requested: plan.mounting.requested,
      allowed: plan.mounting.allowed,
      reasons: plan.mounting.reasons.map((reason) => ({
        code: reason.code,
        clearance: reason.clearance,
        text: describeMountingReason(reason, show),
      })),
    },
    speed: presentSpeed(plan.speed, show, units !== undefined),
    limits: plan.limits.map((limit, index) => ({
      name: limit.name,
      rpm: rpm(limit.rpm),
      strength: limit.strength,
      isBinding: index === 0,
      basis: describeLimit(limit, show),
      formula: limit.formula,
      source: limit.source,
    })),
    passes: plan.passes.map((planned) => presentPass(planned, show, units !== undefined)),
    guide: plan.guide === undefined ? null : { code: plan.guide, text: describeGuide(plan.guide) },
    ...(plan.testPiece && { testPiece: presentTestPiece(plan.testPiece) }),
    steps: plan.steps.map((step, index) => ({
      number: index + 1,
      code: step.code,
      ...("pass" in step && step.pass !== undefined ? { pass: step.pass } : {}),
      ...("bit" in step && step.bit !== undefined ? { bitId: step.bit.id } : {}),
      text: describeStep(step, show),
    })),
    precautions: plan.precautions.map((each) => ({ code: each.code, text: describePrecaution(each, show) })),
    assumptions: plan.assumptions.map((each) => ({ code: each.code, text: describeAssumption(each, show) })),
    wood: { id: wood.id, name: wood.name },
    advice: ADVICE,
    digest: seal.digest,
    engineVersion: seal.engineVersion,
  };
}

function presentTestPiece({ depthMm, widthMm }: TestPiece): TestPiece {
  return {
    ...(depthMm !== undefined && { depthMm: roundTo(depthMm, DECIMALS.mm) }),
    ...(widthMm !== undefined && { widthMm: roundTo(widthMm, DECIMALS.mm) }),
  };
}

function presentSpeed(speed: PlannedSpeed, show: Show, withDisplay: boolean): PlanAnswer["speed"] {
  const { setting } = speed;
  return {
    ceilingRpm: rpm(speed.ceilingRpm),
    bindingLimit: speed.bindingLimit,
    nextLimit: speed.nextLimit ?? null,
    raisedBy: speed.raisedBy
      ? { code: speed.raisedBy.code, text: describeRaisedBy(speed.raisedBy, show) }
      : null,
    rpm: setting ? rpm(setting.rpm) : null,
    rpmHighest: setting ? rpm(setting.rpmHighest) : null,
    mark: setting?.mark === undefined ? null : dialMark(setting.mark),
    basis: setting?.basis ?? null,
    rimSpeedMPerS: setting ? floorTo(setting.rimSpeedMPerS, DECIMALS.mPerS) : null,
    rimSpeedMph: setting ? floorTo(setting.rimSpeedMPerS / M_PER_S_PER_MPH, DECIMALS.mph) : null,
    slowestEdgeMPerS: setting ? floorTo(setting.slowestEdgeMPerS, DECIMALS.mPerS) : null,
    rotation: setting ? presentRotation(setting.rotation) : null,
    nextFaster: setting?.nextFaster
      ? {
          mark: setting.nextFaster.speed.mark === undefined ? null : dialMark(setting.nextFaster.speed.mark),
          rpm: rpm(setting.nextFaster.speed.rpm),
          rpmHighest: rpm(setting.nextFaster.speed.rpmHighest),
          breaks: [...setting.nextFaster.breaks],
        }
      : null,
    uncertainties: speed.uncertainties.map((cost) => ({
      code: cost.code,
      gainRpm: rpm(cost.gainRpm),
      text: describeUncertainty(cost, show),
    })),
    ...(withDisplay && setting
      ? { display: { rpm: show.rotation(setting.rpm), rimSpeed: show.speed(setting.rimSpeedMPerS) } }
      : {}),
  };
}

function presentRotation(rotation: Rotation): NonNullable<PlanAnswer["speed"]["rotation"]> {
  return {
    rpm: rpm(rotation.rpm),
    storedEnergyJ: roundTo(rotation.storedEnergyJ, DECIMALS.j),
    unbalanceForceN: roundTo(rotation.unbalanceForceN, DECIMALS.n),
    unbalancePerWeightRatio: roundTo(rotation.unbalancePerWeightRatio, DECIMALS.ratio),
    balanceGradeMmPerS: roundTo(rotation.balanceGradeMmPerS, DECIMALS.mmPerS),
    criticalSpeedRpm: rpm(rotation.criticalSpeedRpm),
    rimStressMPa: roundTo(rotation.rimStressMPa, DECIMALS.mPa),
    bodyStressMPa: roundTo(rotation.bodyStressMPa, DECIMALS.mPa),
    tipForceN: roundTo(rotation.tipForceN, DECIMALS.n),
    tipEnergyJ: roundTo(rotation.tipEnergyJ, DECIMALS.j),
    gyroscopicCoupleNm: roundTo(rotation.gyroscopicCoupleNm, DECIMALS.nm),
  };
}

/** How a pass is set up, in figures a person can set. */
export function passFigures({ pass, feed }: Pick<PlannedPass, "pass" | "feed">) {
  return {
    heightMm: roundTo(pass.heightMm, DECIMALS.mm),
    cutterMm: roundTo(pass.cutterMm, DECIMALS.mm),
    fenceMm: roundTo(pass.fenceMm, DECIMALS.mm),
    feedMPerMin: roundTo(feed.feedMPerMin, DECIMALS.mPerMin),
  };
}

function presentPass(
  { pass, feed, load, uses, powerW, secondsPerEdge }: PlannedPass,
  show: Show,
  withDisplay: boolean,
): PlanAnswer["passes"][number] {
  const { geometry } = pass;
  const mostUsed = uses.reduce((most, use) => (use.ratio > most.ratio ? use : most));
  return {
    number: pass.number,
    kind: pass.kind,
    ...passFigures({ pass, feed }),
    ...(pass.runs !== undefined && { runs: pass.runs }),
    ...(pass.lastRunOverMm !== undefined && { lastRunOverMm: roundTo(pass.lastRunOverMm, DECIMALS.mm) }),
    biteMm: roundTo(geometry.biteMm, DECIMALS.mm),
    removedAreaMm2: roundTo(geometry.removedAreaMm2, DECIMALS.mm2),
    engagedMm: roundTo(geometry.engagedMm, DECIMALS.mm),
    feedPerToothMm: roundTo(feed.feedPerToothMm, DECIMALS.toothMm),
    chipMeanMm: roundTo(load.chipMeanMm, DECIMALS.chipMm),
    chipGreatestMm: roundTo(load.chipGreatestMm, DECIMALS.chipMm),
    chipThinningRatio: roundTo(load.chipThinningRatio, DECIMALS.ratio),
    toothMarkPitchMm: roundTo(feed.toothMarkPitchMm, DECIMALS.toothMm),
    waveHeightMm: roundTo(feed.waveHeightMm, DECIMALS.waveMm),
    peakForceN: roundTo(load.peakForceN, DECIMALS.n),
    torqueNm: roundTo(load.torqueNm, DECIMALS.nm),
    shankStressMPa: roundTo(load.shankStressMPa, DECIMALS.mPa),
    shankDeflectionMm: roundTo(load.shankDeflectionMm, DECIMALS.chipMm),
    powerW: roundTo(powerW, DECIMALS.w),
    secondsPerEdge: secondsPerEdge.map((seconds) => roundTo(seconds, DECIMALS.s)),
    heldBy: mostUsed.name,
    uses: uses.map(({ name, ratio }) => ({
      constraint: name,
      percent: roundTo(100 * ratio, DECIMALS.percent),
    })),
    ...(withDisplay
      ? {
          display: {
            height: show.length(pass.heightMm),
            cutter: show.length(pass.cutterMm),
            fence: show.length(pass.fenceMm),
            removedArea: show.area(geometry.removedAreaMm2),
            feed: show.feed(feed.feedMPerMin),
          },
        }
      : {}),
  };
}
