import {
  approvalGrounds,
  approvals,
  checks,
  courses,
  enrolments,
  lapses,
  qualifications,
  shopPolicies,
} from "./tables/courses.ts";
import { checkpoints, imports } from "./tables/history.ts";
import { plans, runOutReadings, speedTrials, uses } from "./tables/learned.ts";
import { keys, people } from "./tables/people.ts";
import { bits, inspections, loans, photographs, places, sharpenings } from "./tables/rack.ts";
import { collets, dialReadings, routers } from "./tables/routers.ts";

/** The table of each kind of record: one line each. */
export const RECORD_TABLES = {
  bit: bits,
  router: routers,
  person: people,
  key: keys,
  place: places,
  plan: plans,
  loan: loans,
  inspection: inspections,
  sharpening: sharpenings,
  "speed-trial": speedTrials,
  "dial-reading": dialReadings,
  collet: collets,
  "run-out-reading": runOutReadings,
  use: uses,
  photograph: photographs,
  checkpoint: checkpoints,
  "shop-policy": shopPolicies,
  course: courses,
  enrolment: enrolments,
  qualification: qualifications,
  approval: approvals,
  lapse: lapses,
  grounds: approvalGrounds,
  check: checks,
  import: imports,
};

/** Columns that are made from a record for its queries, and are no part of it. */
export const QUERY_COLUMNS: readonly string[] = [
  "number",
  "words",
  "facets",
  "ceilingRpm",
  "guideRpm",
  "usedMinutes",
  "reorderReason",
];
