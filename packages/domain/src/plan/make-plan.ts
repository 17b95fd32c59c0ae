import { bitFaults } from "../bit/faults.ts";
import { formPilotRadiusMm } from "../bit/form/registry.ts";
import { angularSpeedRadPerS } from "../bit/rotation.ts";
import { radiiInUse } from "../bit/section.ts";
import { type BitSolid, bitSolid } from "../bit/solid.ts";
import { cutFaults } from "../cut/faults.ts";
import { feedFor, secondsAlong } from "../cut/feed.ts";
import { findPasses, type Pass } from "../cut/passes.ts";
import { type CutSetup, cutSetup } from "../cut/setup.ts";
import { type Ceiling, limitsBroken, speedCeiling } from "../limit/ceiling.ts";
import { chartRpm } from "../limit/diameter-chart.ts";
import { rimSpeedMPerS } from "../limit/rim-speed.ts";
import { precautionsFor } from "../precaution/registry.ts";
import { DomainError, type Fault, faultsUnder } from "../quantity/fault.ts";
import { hasColletFor, shankFaults } from "../router/collet.ts";
import { type DialSpeed, dialSpeeds } from "../router/dial.ts";
import { routerFaults } from "../router/faults.ts";
import { type MountingFinding, mountingFor } from "../router/mounting.ts";
import { assumptionsFor } from "./assumptions.ts";
import type { Finding } from "./findings.ts";
import { limitContext } from "./known.ts";
import type { Plan, PlanInput, PlannedPass, PlannedSetting, Verdict } from "./plan.ts";
import { orderOfWork } from "./steps.ts";
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
  const mounting = mountingFor(solid, chartRpm(2 * solid.rimRadiusMm), policy);
  const speeds = dialSpeeds(router, policy);
  const fit = fastestThatHolds(speeds, ceiling.limits);
  const findings = findingsFor(input, mounting, speeds, fit, passes, ceiling);
  const verdict = verdictOf(findings);
  const mayRun = verdict !== "do-not-run" && fit !== undefined && passes !== undefined;
  const setting = mayRun ? plannedSetting(fit, speeds, ceiling, solid, setup) : undefined;
  const planned = setting && passes ? withFeeds(passes, setting, input, setup) : [];
  return {
    verdict,
    findings,
    mounting: { ...mounting, requested },
    speed: {
      ceilingRpm: ceiling.rpm,
      bindingLimit: ceiling.binding.name,
      nextLimit: ceiling.next?.name,
      raisedBy: ceiling.raisedBy,
      uncertainties: setting ? uncertaintyCosts(context, speeds, ceiling.limits, setting.rpm) : [],
      setting,
    },
    limits: ceiling.limits,
    passes: planned,
    steps: setting
      ? orderOfWork(setup, planned, setting, cut.edges, requested, mounting.allowed !== "handheld")
      : [],
    precautions: precautionsFor({
      ...input,
      solid,
      setup,
      clearance: mounting.allowed,
      pilotRadiusMm: formPilotRadiusMm(bit.form),
    }),
    assumptions: assumptionsFor(bit, solid, router, setup, setting, policy),
  };
}

function inputFaults({ bit, router, cut }: PlanInput): Fault[] {
  return [
    ...faultsUnder("/bit", bitFaults(bit)),
    ...faultsUnder("/router", routerFaults(router)),
    ...faultsUnder("/bit", shankFaults(bit.shankDiameterMm, router)),
    ...faultsUnder("/cut", cutFaults(cut)),
  ];
}

function setupUnder(pointer: string, { bit, cut }: PlanInput, solid: BitSolid): CutSetup {
  try {
    return cutSetup(bit, solid.outline, cut);
  } catch (error) {
    if (error instanceof DomainError) throw new DomainError(faultsUnder(pointer, error.faults));
    throw error;
  }
}

function findingsFor(
  input: PlanInput,
  { allowed }: MountingFinding,
  speeds: readonly DialSpeed[],
  fit: DialSpeed | undefined,
  passes: readonly Pass[] | undefined,
  { limits }: Ceiling,
): Finding[] {
  const findings: Finding[] = [];
  const handheld = input.mounting === "handheld";
  if (handheld && allowed === "table-only") findings.push({ code: "table-only", severity: "refuse" });
  const { shankDiameterMm } = input.bit;
  if (!hasColletFor(shankDiameterMm, input.router)) {
    const { colletDiametersMm = [] } = input.router;
    findings.push({ code: "no-collet-fits", severity: "refuse", shankDiameterMm, colletDiametersMm });
  }
  const [slowest] = speeds;
  if (fit === undefined && slowest !== undefined) {
    const broken = limitsBroken(limits, slowest);
    findings.push({
      code: "router-too-fast",
      severity: "refuse",
      slowestRpm: slowest.rpm,
      slowestRpmHighest: slowest.rpmHighest,
      breaks: broken.map(({ name }) => name),
      limitRpm: Math.min(...broken.map(({ rpm }) => rpm)),
    });
  }
  if (passes === undefined) findings.push({ code: "too-many-passes", severity: "refuse" });
  if (handheld && allowed === "handheld-with-care")
    findings.push({ code: "handheld-with-care", severity: "care" });
  if (!handheld && allowed !== "handheld")
    findings.push({ code: "large-bit", severity: "care", clearance: allowed });
  return findings;
}

function verdictOf(findings: readonly Finding[]): Verdict {
  if (findings.some(({ severity }) => severity === "refuse")) return "do-not-run";
  return findings.length > 0 ? "run-with-care" : "run";
}

function plannedSetting(
  fit: DialSpeed,
  speeds: readonly DialSpeed[],
  { limits }: Ceiling,
  solid: BitSolid,
  setup: CutSetup,
): PlannedSetting {
  const faster = speeds.find(({ rpm }) => rpm > fit.rpm);
  const leastRadiusMm = radiiInUse(solid.outline, setup)?.leastMm ?? 0;
  return {
    ...fit,
    rimSpeedMPerS: rimSpeedMPerS(2 * solid.rimRadiusMm, fit.rpm),
    slowestEdgeMPerS: rimSpeedMPerS(2 * leastRadiusMm, fit.rpm),
    nextFaster: faster && { ...faster, breaks: limitsBroken(limits, faster).map(({ name }) => name) },
  };
}

function withFeeds(
  passes: readonly Pass[],
  { rpm }: PlannedSetting,
  { bit, cut, policy }: PlanInput,
  setup: CutSetup,
): PlannedPass[] {
  const { wings } = bit;
  const omegaRadPerS = angularSpeedRadPerS(rpm);
  return passes.map((pass) => {
    const { feedPerToothMm, torqueNm } = pass.load;
    const feed = feedFor(feedPerToothMm, rpm, wings, setup.greatestRadiusMm, policy.handFeedMaxMPerMin);
    return {
      pass,
      feed,
      // A hand that cannot keep up takes a thinner chip, and no more power than this.
      powerW: torqueNm * omegaRadPerS,
      secondsPerEdge: cut.edges.map(({ lengthMm }) => secondsAlong(lengthMm, feed.feedMPerMin)),
    };
  });
}
