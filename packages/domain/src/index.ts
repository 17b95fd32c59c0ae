// Long because it is the one door of the package: one line for each thing that may be used.

export { BIT_RANGES, type Bit } from "./bit/bit.ts";
export { formDiameterMm } from "./bit/diameter.ts";
export { bitFaults, formFaults } from "./bit/faults.ts";
export type {
  DimensionSpec,
  DimensionSpecs,
  SegmentsSpec,
} from "./bit/form/define.ts";
export { GIVEN_OUTLINE_RANGES, GIVEN_SEGMENT_RANGES, type GivenSegment } from "./bit/form/given-segment.ts";
export {
  FORMS,
  type Form,
  type FormKind,
  type FormSummary,
  formOutline,
  formPilotRadiusMm,
} from "./bit/form/registry.ts";
export type { CutKind } from "./bit/form/usual-cut.ts";
export { type Stretch, stretchesAbove } from "./bit/moments.ts";
export {
  type Outline,
  outlineLengthMm,
  radiusOnSegmentMm,
  type Segment,
  segmentSpanMm,
} from "./bit/outline.ts";
export { runOutFaults, smallestUsableFaults } from "./bit/plausible.ts";
export { type Plunge, plungeOf } from "./bit/plunge.ts";
export {
  type Profile,
  type ProfilePiece,
  type ProfilePoint,
  type ProfileView,
  profileAfter,
  profileAfterPasses,
} from "./bit/profile.ts";
export { edgeLengthInUseMm } from "./bit/rim-length.ts";
export {
  angularSpeedRadPerS,
  balanceGradeMmPerS,
  boredDiscStressPa,
  gyroscopicCoupleNm,
  ringStressPa,
  rotatingForceN,
  rpmAtSwingingForce,
  rpmOf,
  STEEL_DENSITY_KG_PER_M3,
  solidDiscStressPa,
  whirlFactor,
} from "./bit/rotation.ts";
export {
  type BitSetting,
  firstContactMm,
  type RadiiInUse,
  radiiInUse,
  removedAreaMm2,
} from "./bit/section.ts";
export {
  bendingStressMPa,
  criticalSpeedRpm,
  deflectionMm,
  equivalentStressMPa,
  stiffnessNPerM,
  torsionStressMPa,
} from "./bit/shank.ts";
export { isParallel, isUndercut } from "./bit/shape.ts";
export {
  type Sharpening,
  type SharpeningLoss,
  type SharpeningsLeft,
  sharpened,
  sharpeningsLeft,
} from "./bit/sharpening.ts";
export { type BitSolid, bitSolid, storedEnergyJ } from "./bit/solid.ts";
export { wastesGrooveMm } from "./bit/wastes-groove.ts";
export { type Chip, chipOf, chipThinningFactor } from "./cut/chip.ts";
export { cuttingPowerW, specificCuttingForceNPerMm2 } from "./cut/cutting-force.ts";
export { EDGE_FIELDS, EDGES_RANGE, type Edge } from "./cut/edge.ts";
export { feedFor, secondsAlong, waveHeightMm } from "./cut/feed.ts";
export { GUIDE_NAMES, type GuideName } from "./cut/guide-name.ts";
export { EVERY_CUT_FIELDS } from "./cut/kind/define.ts";
export { CUTS, type Cut, type CutSettings, type CutSummary, cutSummary } from "./cut/kind/registry.ts";
export type { Pass } from "./cut/passes.ts";
export type { SetIn } from "./cut/settable.ts";
export { WORK_FIELDS, type Work } from "./cut/work.ts";
export type { Change, ChangeCode, ChangeoverTimes, DayOrder, DaySetup, DayStep } from "./day/day.ts";
export { orderDay, orderDaySteps } from "./day/order-day.ts";
export { LEAST_WOOD_FOR_BEARING_MM, woodForBearingMm } from "./guide/bearing-contact.ts";
export type { FeedDirection } from "./guide/direction.ts";
export { GUIDES } from "./guide/registry.ts";
export {
  type TemplateAsked,
  type TemplateFinding,
  type TemplateFindingCode,
  type TemplateFit,
  templateFit,
} from "./guide/template-fit.ts";
export { afterMishaps, type Mishap } from "./job/after-mishap.ts";
export {
  type EdgeBefore,
  type EdgeEnd,
  type EdgeOverJob,
  edgesOverJob,
} from "./job/edge-over-job.ts";
export type { OrderRule } from "./job/order-rule.ts";
export { PART_FIELDS, type PartPlace, type PartSize, PIECES_RANGE, partEdges, partWork } from "./job/part.ts";
export type { Before, JobSetup, MadeAt, PlannedCut, SetupRun } from "./job/set-up.ts";
export { jobSetups, jobSetupsSteps } from "./job/set-ups.ts";
export { type JobTimes, jobTimes, type MinuteRange } from "./job/times.ts";
export type { Placed } from "./joint/between-walls.ts";
export { closeJoint, type JointClosure } from "./joint/close-joint.ts";
export { correctedJoint, type JointMeasured } from "./joint/correct-joint.ts";
export type { JointFinding, JointFindingCode, PairDimension } from "./joint/finding.ts";
export type { JointHalf } from "./joint/half.ts";
export { JOINT_KINDS, type JointKind } from "./joint/joint-kind.ts";
export type {
  HalfDefinition,
  HalfName,
  JointAsked,
  JointDefinition,
} from "./joint/kind/define.ts";
export { JOINTS, jointDefinition } from "./joint/kind/registry.ts";
export { pairFindings } from "./joint/pair-findings.ts";
export {
  type HalfMeasures,
  JOINT_RANGES,
  type JointCut,
  type SolvedHalf,
  type SolvedJoint,
  solveJoint,
} from "./joint/solve-joint.ts";
export { LIMITS, type LimitFinding, type LimitName } from "./limit/ceiling.ts";
export { chartRpm } from "./limit/diameter-chart.ts";
export type { RaisedBy, Unmeasured } from "./limit/limit.ts";
export { rimSpeedMPerS, rpmAtRimSpeed } from "./limit/rim-speed.ts";
export { type TrialVerdict, trialVerdict } from "./limit/tested.ts";
export type { SpeedTrial } from "./limit/trial.ts";
export { trialOutcome, VIBRATION_RANGE } from "./limit/trial-outcome.ts";
export { bitSizes, bitWords } from "./lookup/bit-words.ts";
export { type Correction, correctWord } from "./lookup/correct-word.ts";
export { editDistance } from "./lookup/edit-distance.ts";
export { type Query, type QuerySize, readQuery } from "./lookup/read-query.ts";
export type { BitSize, SizeRole } from "./lookup/size.ts";
export { wordsIn } from "./lookup/words.ts";
export type { PanelAssumption } from "./panel/assumptions.ts";
export type { PanelDimension, SideState } from "./panel/dimension.ts";
export type { ClimateFinding, PanelFinding, PanelVerdict } from "./panel/findings.ts";
export { type Climate, type Opening, PANEL_RANGES, type PanelsInput, type Sawn } from "./panel/panel.ts";
export type { Reveal, SizedPanel } from "./panel/size-panel.ts";
export { type PanelSizing, sizePanels } from "./panel/size-panels.ts";
export type { Tongue } from "./panel/tongue.ts";
export { type PanelMachine, type PanelWork, planPanelWork } from "./panel/work.ts";
export type { AssumptionCode } from "./plan/assumptions.ts";
export { bitCeilings } from "./plan/bit-ceiling.ts";
export { clearanceOf } from "./plan/clearance.ts";
export { correctedSetting, type MadeSetting, type SettingCorrection } from "./plan/corrections.ts";
export type { DialSetting } from "./plan/dial-setting.ts";
export { ENGINE_VERSION } from "./plan/engine.ts";
export type { FindingCode, Severity } from "./plan/findings.ts";
export { makePlan } from "./plan/make-plan.ts";
export { type NextTrial, nextTrial, type TrialCeiling, type TrialInput } from "./plan/next-trial.ts";
export type { PastUse } from "./plan/past-use.ts";
export { type Plan, type PlanInput, type PlannedSpeed, VERDICT_RANK, type Verdict } from "./plan/plan.ts";
export type { PlannedPass } from "./plan/planned-pass.ts";
export { planProfiles } from "./plan/profiles.ts";
export type { Rotation } from "./plan/rotation.ts";
export { type PlanSections, planSections } from "./plan/sections.ts";
export type { Step, StepCode } from "./plan/steps.ts";
export type { TestPiece } from "./plan/test-piece.ts";
export { usualCut, usualSettings } from "./plan/usual-cut.ts";
export type { WasteBit, WasteGroove } from "./plan/waste-groove.ts";
export {
  DEFAULT_POLICY,
  type Policy,
  type PolicyLayer,
  policyFaults,
  RULE_NAMES,
  stricterLayer,
  strictestPolicy,
} from "./policy/policy.ts";
export { RULES } from "./policy/rules.ts";
export type { PrecautionCode } from "./precaution/registry.ts";
export { compareRanks } from "./quantity/compare-ranks.ts";
export { DomainError, type Fault, type FaultCode, faultsUnder } from "./quantity/fault.ts";
export type { ChoiceSpec, FieldSpec, FieldSpecs, FlagSpec, MeasureSpec } from "./quantity/field.ts";
export { parseLength, parseMass, parseRotation, parseSpeed } from "./quantity/parse.ts";
export { floorTo, roundTo } from "./quantity/round.ts";
export { M_PER_S_PER_MPH } from "./quantity/units.ts";
export { hasColletFor, isSameSize, SAME_SIZE_MM } from "./router/collet.ts";
export {
  type DialSpeed,
  type DoubtedReading,
  dialSpeeds,
  doubtedReadings,
  type SpeedBasis,
} from "./router/dial.ts";
export { routerFaults, unlikelyReadingFaults } from "./router/faults.ts";
export { markPosition } from "./router/mark.ts";
export type { Mounting, MountingClearance, MountingFinding, MountingReason } from "./router/mounting.ts";
export { believableRpm, readingsAgree, readingsContradict } from "./router/reading.ts";
export {
  type Dial,
  type DialReading,
  type Mark,
  ROUTER_RANGES,
  type Router,
  type UnusedReading,
} from "./router/router.ts";
export type { SearchBit } from "./search/bit-view.ts";
export { type FormProposal, formsThatWouldMake } from "./search/forms-that-would-make.ts";
export type { NotTaken, NotTakenReason } from "./search/not-taken.ts";
export type { ArcPiece, LinePiece, Piece } from "./search/piece.ts";
export {
  type ProfileSearch,
  type SearchOptions,
  searchProfile,
  searchProfileInSteps,
} from "./search/search-profile.ts";
export type { SearchSetting } from "./search/setting.ts";
export type { Presentation, WantedProfile, WantedWall } from "./search/wanted.ts";
export { wantedFrom } from "./search/wanted-from.ts";
export { WANTED_RANGES, type WantedPath, type WantedSegment } from "./search/wanted-path.ts";
export { type EdgeLife, type EdgeLifeInput, edgeLife, type Use, WEAR_RANGES } from "./wear/edge-life.ts";
export { TOOTH_MATERIALS, type ToothMaterial } from "./wear/tooth-material.ts";
export { wearFactor } from "./wear/wear-factor.ts";
export { WOODS, woodById } from "./wood/registry.ts";
export type { Wood } from "./wood/wood.ts";
export { type Card, type CardSection, cardText } from "./wording/card.ts";
export { codesIn } from "./wording/codes-in.ts";
export { describeAssumption } from "./wording/english/assumptions.ts";
export { describeChange } from "./wording/english/changes.ts";
export { describeCorrection } from "./wording/english/corrections.ts";
export { describeFault, type FaultWords } from "./wording/english/faults.ts";
export { describeFinding } from "./wording/english/findings.ts";
export { describeGuide, GUIDE_MEANINGS, guideTitle } from "./wording/english/guides.ts";
export { describeHalfMeasures, describeJointFinding } from "./wording/english/joints.ts";
export { describeLimit, describeRaisedBy, limitTitle } from "./wording/english/limits.ts";
export { ASSUMPTION_MEANINGS } from "./wording/english/meanings/assumptions.ts";
export { CHANGE_MEANINGS } from "./wording/english/meanings/changes.ts";
export { FINDING_MEANINGS } from "./wording/english/meanings/findings.ts";
export { HALF_MEANINGS, JOINT_FINDING_MEANINGS } from "./wording/english/meanings/joints.ts";
export { CLEARANCE_MEANINGS, MOUNTING_REASON_MEANINGS } from "./wording/english/meanings/mounting.ts";
export { PANEL_ASSUMPTION_MEANINGS, PANEL_FINDING_MEANINGS } from "./wording/english/meanings/panels.ts";
export { PRECAUTION_MEANINGS } from "./wording/english/meanings/precautions.ts";
export { NOT_TAKEN_MEANINGS } from "./wording/english/meanings/searches.ts";
export {
  LIMIT_MEANINGS,
  RAISED_BY_MEANINGS,
  SPEED_BASIS_MEANINGS,
  UNCERTAINTY_MEANINGS,
} from "./wording/english/meanings/speed.ts";
export { STEP_MEANINGS } from "./wording/english/meanings/steps.ts";
export { TEMPLATE_FINDING_MEANINGS } from "./wording/english/meanings/templates.ts";
export {
  PANEL_VERDICT_MEANINGS,
  SEVERITY_MEANINGS,
  VERDICT_MEANINGS,
} from "./wording/english/meanings/verdicts.ts";
export { describeMountingReason } from "./wording/english/mounting.ts";
export { mountingTitle } from "./wording/english/mountings.ts";
export {
  describeClimateFinding,
  describePanelAssumption,
  describePanelFinding,
} from "./wording/english/panels.ts";
export { planCard, verdictTitle } from "./wording/english/plan-card.ts";
export { ADVICE, describePrecaution } from "./wording/english/precautions.ts";
export { describeNotTaken, describePresentation } from "./wording/english/searches.ts";
export { describeCeiling, describeSpeed } from "./wording/english/speeds.ts";
export { describeStep } from "./wording/english/steps.ts";
export { describeTemplateFinding } from "./wording/english/templates.ts";
export { describeNextTrial } from "./wording/english/trials.ts";
export { describeUncertainty } from "./wording/english/uncertainties.ts";
export { type Show, showIn, type Units } from "./wording/show.ts";
