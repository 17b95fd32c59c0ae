import { formPilotRadiusMm } from "../bit/form/registry.ts";
import { type BitSolid, bitSolid } from "../bit/solid.ts";
import { climbsOf } from "../cut/climbs.ts";
import type { ConstraintContext } from "../cut/constraints.ts";
import { cutFaults } from "../cut/faults.ts";
import { type CutSetup, cutSetup } from "../cut/setup.ts";
import { stockFaults } from "../cut/stock.ts";
import { feedDirection, guidanceFor } from "../guide/choose.ts";
import { withInfeedHalf } from "../guide/fence-with-offset-outfeed.ts";
import { speedCeiling } from "../limit/ceiling.ts";
import { precautionsFor } from "../precaution/registry.ts";
import { DomainError, type Fault, faultsUnder } from "../quantity/fault.ts";
import { dialSpeeds } from "../router/dial.ts";
import { assumptionsFor } from "./assumptions.ts";
import { chipFindings } from "./chip-findings.ts";
import { mountingOf } from "./clearance.ts";
import { dialSetting } from "./dial-setting.ts";
import { pairFaults } from "./faults.ts";
import { judge, verdictOf } from "./judge.ts";
import { limitContext } from "./limit-context.ts";
import type { Plan, PlanInput } from "./plan.ts";
import { plannedPass } from "./planned-pass.ts";
import { orderOfWork } from "./steps.ts";
import { testPieceFor } from "./test-piece.ts";
import { fastestThatHolds, uncertaintyCosts } from "./uncertainty.ts";

/**
 * The plan for one cut: what the bit is cleared for, the speed ceiling and the dial mark under it, the passes, the
 * order of work, what to watch, and what was taken for granted. The same input gives the same plan.
 * Throws a DomainError with every fault when the input has no answer.
 * @example
 * const plan = makePlan({
 *   bit: { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2, markedMaxRpm: 16_000 },
 *   router: { minRpm: 10_000, maxRpm: 20_000, dial: { marks: { first: 1, last: 5 } }, inputPowerW: 1600 },
 *   mounting: "table",
 *   wood: woodById("black-cherry"),
 *   cut: { kind: "groove", depthMm: 6, edges: [{ lengthMm: 600, grain: "long" }] },
 *   policy: DEFAULT_POLICY,
 * });
 * plan.speed // → { ceilingRpm: 16_000, bindingLimit: "marked-maximum", setting: { mark: 2, rpm: 12_500 } }
 */
export function makePlan(input: PlanInput): Plan {
  const faults = inputFaults(input);
  if (faults.length > 0) throw new DomainError(faults);
  const { bit, router, mounting: requested, wood, cut, policy, setIn = "metric" } = input;
  const solid = bitSolid(bit);
  const setup = setupUnder("/cut", input, solid);
  // A cut across the grain meets end grain in part of each turn: the heavier is taken.
  const grain = cut.edges.some((edge) => edge.grain !== "long") ? "end" : "long";
  const load: ConstraintContext = {
    climbs: climbsOf(cut),
    bit,
    solid,
    router,
    wood,
    grain,
    setup,
    policy,
    mounting: requested,
    setIn,
  };
  const context = limitContext(input, solid);
  const ceiling = speedCeiling(context);
  const mounting = mountingOf(bit, solid, policy);
  const speeds = dialSpeeds(router, policy);
  const fit = fastestThatHolds(speeds, ceiling.limits);
  const isHeavy = mounting.bySize !== "handheld";
  const pilotRadiusMm = formPilotRadiusMm(bit.form);
  const { outline } = solid;
  const guided = { cut, setup, mounting: requested, form: bit.form.kind, outline, pilotRadiusMm };
  const guidance = guidanceFor(guided);
  const { guide } = guidance;
  const direction = guide && feedDirection(guide, guided);
  const judged = judge({ input, solid, setup, load, ceiling, speeds, fit, mounting, guidance });
  const { passes } = judged;
  const mayRun = verdictOf(judged.findings) !== "do-not-run" && fit !== undefined && passes !== undefined;
  const setting = mayRun ? dialSetting(fit, speeds, ceiling.limits, context, setup) : undefined;
  const { edges } = cut;
  const isInHalves = guide?.name === "fence-with-offset-outfeed";
  const planned =
    setting && passes
      ? passes.map((pass) =>
          plannedPass(isInHalves ? withInfeedHalf(pass, setup) : pass, { load, edges, rpm: setting.rpm }),
        )
      : [];
  const findings = setting
    ? [...judged.findings, ...chipFindings(planned, setting, policy)]
    : judged.findings;
  const testPiece = setting && guide ? testPieceFor(setup, solid, guide) : undefined;
  return {
    verdict: verdictOf(findings),
    findings,
    mounting: { ...mounting, requested },
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
    guide: guide?.name,
    testPiece,
    steps:
      setting && guide && direction
        ? orderOfWork({ guide, direction, guided, isHeavy, testPiece }, planned, setting)
        : [],
    precautions: precautionsFor({
      bit,
      router,
      mounting: requested,
      cut,
      solid,
      isHeavy,
      setup,
      wood,
      direction,
      guide: guide?.name,
      hasTestPiece: testPiece !== undefined,
      guideSays: guide?.says(guided) ?? [],
    }),
    assumptions: assumptionsFor(input, solid, setup, setting, guidance),
  };
}

function inputFaults({ bit, router, cut }: PlanInput): Fault[] {
  return [...pairFaults(bit, router), ...faultsUnder("/cut", cutFaults(cut))];
}

function setupUnder(pointer: string, { bit, cut, setIn = "metric" }: PlanInput, solid: BitSolid): CutSetup {
  try {
    const setup = cutSetup(bit, solid.outline, cut, setIn);
    const faults = stockFaults(bit, solid.outline, cut, setup.heightMm);
    if (faults.length > 0) throw new DomainError(faults);
    return setup;
  } catch (error) {
    if (error instanceof DomainError) throw new DomainError(faultsUnder(pointer, error.faults));
    throw error;
  }
}
