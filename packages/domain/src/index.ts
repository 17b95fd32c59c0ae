export { BIT_RANGES, type Bit } from "./bit/bit.ts";
export { bitFaults } from "./bit/faults.ts";
export type {
  ChoiceSpec,
  DimensionSpec,
  DimensionSpecs,
  MeasureSpec,
  SegmentsSpec,
} from "./bit/form/define.ts";
export { GIVEN_SEGMENT_RANGES, type GivenSegment } from "./bit/form/given-segment.ts";
export { FORMS, type Form, type FormKind, type FormSummary, formOutline } from "./bit/form/registry.ts";
export type { Outline, Segment } from "./bit/outline.ts";
export { removedAreaMm2, type Setting } from "./bit/section.ts";
export { type BitSolid, bitSolid, storedEnergyJ } from "./bit/solid.ts";
export { CUT_RANGES, type Cut, type Edge } from "./cut/cut.ts";
export { chartRpm } from "./limit/diameter-chart.ts";
export { rimSpeedMPerS, rpmAtRimSpeed } from "./limit/rim-speed.ts";
export type { SpeedTrial } from "./limit/trial.ts";
export { ENGINE_VERSION } from "./plan/engine.ts";
export { makePlan } from "./plan/make-plan.ts";
export type { Plan, PlanInput, PlannedPass, PlannedSetting, PlannedSpeed, Verdict } from "./plan/plan.ts";
export {
  DEFAULT_POLICY,
  type Policy,
  type PolicyLayer,
  policyFaults,
  RULE_NAMES,
  strictestPolicy,
} from "./policy/policy.ts";
export { RULES } from "./policy/rules.ts";
export { DomainError, type Fault, type FaultCode, faultsUnder } from "./quantity/fault.ts";
export { floorTo, roundTo } from "./quantity/round.ts";
export { M_PER_S_PER_MPH } from "./quantity/units.ts";
export { type DialSpeed, dialSpeeds } from "./router/dial.ts";
export { routerFaults } from "./router/faults.ts";
export { type Dial, type DialReading, type Mark, ROUTER_RANGES, type Router } from "./router/router.ts";
export { WOODS, woodById } from "./wood/registry.ts";
export type { Wood } from "./wood/wood.ts";
export { describeAssumption } from "./wording/english/assumptions.ts";
export { describeFault, type FaultWords } from "./wording/english/faults.ts";
export { describeFinding } from "./wording/english/findings.ts";
export { describeLimit, describeRaisedBy } from "./wording/english/limits.ts";
export { describeMountingReason } from "./wording/english/mounting.ts";
export { ADVICE, describePrecaution } from "./wording/english/precautions.ts";
export { describeStep } from "./wording/english/steps.ts";
export { describeUncertainty } from "./wording/english/uncertainties.ts";
export { type Show, showIn, type Units } from "./wording/show.ts";
