import { formPilotRadiusMm } from "../bit/form/registry.ts";
import { type BitSolid, bitSolid } from "../bit/solid.ts";
import { cuttingPowerW } from "../cut/cutting-force.ts";
import { cutFaults } from "../cut/faults.ts";
import { feedFor, secondsAlong } from "../cut/feed.ts";
import { findPasses, type Pass } from "../cut/passes.ts";
import { type CutSetup, cutSetup } from "../cut/setup.ts";
import { type Ceiling, limitsBroken, speedCeiling } from "../limit/ceiling.ts";
import type { LimitContext } from "../limit/limit.ts";
import { rimSpeedMPerS } from "../limit/rim-speed.ts";
import { precautionsFor } from "../precaution/registry.ts";
import { DomainError, type Fault, faultsUnder } from "../quantity/fault.ts";
import { MM_PER_M } from "../quantity/units.ts";
import { type DialSpeed, dialSpeeds } from "../router/dial.ts";
import { assumptionsFor } from "./assumptions.ts";
import { mountingOf } from "./clearance.ts";
import { pairFaults } from "./faults.ts";
import { judge, verdictOf } from "./judge.ts";
import { limitContext } from "./known.ts";
import type { Plan, PlanInput, PlannedPass, PlannedSetting } from "./plan.ts";
import { rotationAt } from "./rotation.ts";
import { orderOfWork } from "./steps.ts";
import { chipFindings } from "./surface-findings.ts";
import { fastestThatHolds, uncertaintyCosts } from "./uncertainty.ts";

/**
 * The plan for one cut: what the bit is cleared for, the speed ceiling and the dial mark under it, the passes, the
 * order of work, what to watch, and what was taken for granted. The same input gives the same plan.
 * Throws a DomainError with every fault when the input has no answer.
 */
export function makePlan(input: PlanInput): Plan {
  const faults = inputFaults(input);
  if (faults.length > 0) throw new DomainError(faults);
  const { bit, router, mounting: requested, wood, cut, policy } = input;
  const solid = bitSolid(bit);
  const setup = setupUnder("/cut", input, solid);
  const grain = cut.edges.some((edge) => edge.grain === "end") ? "end" : "long";
  const passes = findPasses({ bit, solid, router, wood, grain, setup, policy, mounting: requested });
  const context = limitContext(input, solid);
  const ceiling = speedCeiling(context);
  const mounting = mountingOf(solid, policy);
  const speeds = dialSpeeds(router, policy);
  const fit = fastestThatHolds(speeds, ceiling.limits);
  const clearance = mounting.allowed;
  const judged = judge({ input, solid, setup, passes, ceiling, speeds, fit, clearance });
  const mayRun = verdictOf(judged) !== "do-not-run" && fit !== undefined && passes !== undefined;
  const setting = mayRun ? plannedSetting(fit, speeds, ceiling, context, setup) : undefined;
  const planned = setting && passes ? withFeeds(passes, setting, input, setup) : [];
  const findings = setting ? [...judged, ...chipFindings(planned, setting, policy)] : judged;
  return {
    verdict: verdictOf(findings),
    findings,
    mounting: { allowed: clearance, reasons: mounting.reasons, requested },
    speed: {
      ceilingRpm: ceiling.rpm,
      bindingLimit: ceiling.binding.name,
      nextLimit: ceiling.next?.name,
      raisedBy: ceiling.raisedBy,
      uncertainties: setting ? uncertaintyCosts(context, speeds, ceiling.limits, setting) : [],
      setting,
    },
    limits: ceiling.limits,
    passes: planned,
    steps: setting ? orderOfWork(setup, planned, setting, cut, requested, clearance !== "handheld") : [],
    precautions: precautionsFor({
      bit,
      router,
      mounting: requested,
      cut,
      solid,
      clearance,
      pilotRadiusMm: formPilotRadiusMm(bit.form),
    }),
    assumptions: assumptionsFor(bit, solid, router, setup, setting, policy),
  };
}

function inputFaults({ bit, router, cut }: PlanInput): Fault[] {
  return [...pairFaults(bit, router), ...faultsUnder("/cut", cutFaults(cut))];
}

function setupUnder(pointer: string, { bit, cut }: PlanInput, solid: BitSolid): CutSetup {
  try {
    return cutSetup(bit, solid.outline, cut);
  } catch (error) {
    if (error instanceof DomainError) throw new DomainError(faultsUnder(pointer, error.faults));
    throw error;
  }
}

function plannedSetting(
  fit: DialSpeed,
  speeds: readonly DialSpeed[],
  { limits }: Ceiling,
  context: LimitContext,
  setup: CutSetup,
): PlannedSetting {
  const faster = speeds.find(({ rpm }) => rpm > fit.rpm);
  return {
    mark: fit.mark,
    rpm: fit.rpm,
    rpmHighest: fit.rpmHighest,
    basis: fit.basis,
    rimSpeedMPerS: rimSpeedMPerS(2 * context.solid.rimRadiusMm, fit.rpm),
    slowestEdgeMPerS: rimSpeedMPerS(2 * setup.leastRadiusMm, fit.rpm),
    rotation: rotationAt(context, fit.rpmHighest),
    nextFaster: faster && { speed: faster, breaks: limitsBroken(limits, faster).map(({ name }) => name) },
  };
}

function withFeeds(
  passes: readonly Pass[],
  { rpm }: PlannedSetting,
  { bit, cut, policy }: PlanInput,
  setup: CutSetup,
): PlannedPass[] {
  const { wings } = bit;
  return passes.map((pass) => {
    const { feedPerToothMm, specificForceNPerMm2, chipMeanMm } = pass.load;
    const feed = feedFor(feedPerToothMm, rpm, wings, setup.greatestRadiusMm, policy.handFeedMaxMPerMin);
    return {
      pass,
      feed,
      chipMeanMm: (chipMeanMm * feed.feedPerToothMm) / feedPerToothMm,
      // A hand that cannot keep up takes a thinner chip, and no more power than this.
      powerW: cuttingPowerW(
        specificForceNPerMm2,
        pass.geometry.removedAreaMm2,
        (feedPerToothMm * rpm * wings) / MM_PER_M,
      ),
      secondsPerEdge: cut.edges.map(({ lengthMm }) => setup.rows * secondsAlong(lengthMm, feed.feedMPerMin)),
    };
  });
}
