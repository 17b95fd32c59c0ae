import type { ApprovalRecord, GroundsRecord, LapseRecord } from "../approvals/approval.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { CheckpointRecord } from "../checkpoints/schema.ts";
import type { CheckRecord } from "../checks/schema.ts";
import type { ColletRecord } from "../collets/schema.ts";
import type { CourseRecord } from "../courses/schema.ts";
import type { ReadingRecord } from "../dial-readings/schema.ts";
import type { EnrolmentRecord } from "../enrolments/schema.ts";
import type { ImportRecord } from "../imports/schema.ts";
import type { InspectionRecord } from "../inspections/schema.ts";
import type { KeyRecord } from "../keys/schema.ts";
import type { LoanRecord } from "../loans/schema.ts";
import type { PersonRecord } from "../people/schema.ts";
import type { PhotographRecord } from "../photographs/schema.ts";
import type { PlaceRecord } from "../places/schema.ts";
import type { PlanRecord } from "../plans/schema.ts";
import type { QualificationRecord } from "../qualifications/schema.ts";
import type { RouterRecord } from "../routers/schema.ts";
import type { RunOutRecord } from "../run-out-readings/schema.ts";
import type { SharpeningRecord } from "../sharpenings/schema.ts";
import type { ShopPolicyRecord } from "../shop-policy/schema.ts";
import type { TrialRecord } from "../speed-trials/schema.ts";
import type { UseRecord } from "../uses/schema.ts";

/** What the store keeps, one line per kind of record. */
export type Records = {
  bit: BitRecord;
  router: RouterRecord;
  person: PersonRecord;
  key: KeyRecord;
  place: PlaceRecord;
  plan: PlanRecord;
  loan: LoanRecord;
  inspection: InspectionRecord;
  sharpening: SharpeningRecord;
  "speed-trial": TrialRecord;
  "dial-reading": ReadingRecord;
  collet: ColletRecord;
  "run-out-reading": RunOutRecord;
  use: UseRecord;
  photograph: PhotographRecord;
  checkpoint: CheckpointRecord;
  "shop-policy": ShopPolicyRecord;
  course: CourseRecord;
  enrolment: EnrolmentRecord;
  qualification: QualificationRecord;
  approval: ApprovalRecord;
  lapse: LapseRecord;
  grounds: GroundsRecord;
  check: CheckRecord;
  import: ImportRecord;
};

export type RecordType = keyof Records;

/** What every kept record has. */
export type Kept = {
  readonly id: string;
  /** 1 when created, one more with each change. */
  readonly version: number;
  readonly createdAt: string;
  readonly updatedAt: string;
};
