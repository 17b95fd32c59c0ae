import {
  ASSUMPTION_MEANINGS,
  CLEARANCE_MEANINGS,
  FINDING_MEANINGS,
  GUIDE_MEANINGS,
  LIMIT_MEANINGS,
  MOUNTING_REASON_MEANINGS,
  PRECAUTION_MEANINGS,
  RAISED_BY_MEANINGS,
  SEVERITY_MEANINGS,
  SPEED_BASIS_MEANINGS,
  STEP_MEANINGS,
  UNCERTAINTY_MEANINGS,
  VERDICT_MEANINGS,
} from "@rimwise/domain";
import { defineCodes } from "../http/code-list.ts";

export const Verdict = defineCodes({
  name: "Verdict",
  title: "What a plan comes to",
  meanings: VERDICT_MEANINGS,
});
export const Severity = defineCodes({
  name: "Severity",
  title: "What a finding does to the verdict",
  meanings: SEVERITY_MEANINGS,
});
export const FindingCode = defineCodes({
  name: "FindingCode",
  title: "What weighs on a plan's verdict",
  meanings: FINDING_MEANINGS,
});
export const LimitName = defineCodes({
  name: "LimitName",
  title: "Reasons not to spin faster",
  meanings: LIMIT_MEANINGS,
});
export const RaisedByCode = defineCodes({
  name: "RaisedByCode",
  title: "What would lift the limit that binds",
  meanings: RAISED_BY_MEANINGS,
});
export const UncertaintyCode = defineCodes({
  name: "UncertaintyCode",
  title: "What costs speed because nobody measured it",
  meanings: UNCERTAINTY_MEANINGS,
});
export const SpeedBasis = defineCodes({
  name: "SpeedBasis",
  title: "What the speed at a mark rests on",
  meanings: SPEED_BASIS_MEANINGS,
});
export const Clearance = defineCodes({
  name: "Clearance",
  title: "What a bit is cleared for",
  meanings: CLEARANCE_MEANINGS,
});
export const ClearanceReasonCode = defineCodes({
  name: "ClearanceReasonCode",
  title: "What a clearance rests on",
  meanings: MOUNTING_REASON_MEANINGS,
});
export const GuideCode = defineCodes({
  name: "GuideCode",
  title: "What guides the work or the router",
  meanings: GUIDE_MEANINGS,
});
export const StepCode = defineCodes({
  name: "StepCode",
  title: "What is done in a step",
  meanings: STEP_MEANINGS,
});
export const PrecautionCode = defineCodes({
  name: "PrecautionCode",
  title: "What a careful teacher would say at the machine",
  meanings: PRECAUTION_MEANINGS,
});
export const AssumptionCode = defineCodes({
  name: "AssumptionCode",
  title: "What a plan took for granted",
  meanings: ASSUMPTION_MEANINGS,
});

/** Every list of codes in a plan. */
export const PLAN_CODES = [
  Verdict,
  Severity,
  FindingCode,
  LimitName,
  RaisedByCode,
  UncertaintyCode,
  SpeedBasis,
  Clearance,
  ClearanceReasonCode,
  GuideCode,
  StepCode,
  PrecautionCode,
  AssumptionCode,
];
