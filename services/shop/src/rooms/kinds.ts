import { approvalKind, groundsKind, lapseKind } from "../approvals/kind.ts";
import { bitKind } from "../bits/kind.ts";
import { checkpointKind } from "../checkpoints/kind.ts";
import { checkKind } from "../checks/kind.ts";
import { colletKind } from "../collets/kind.ts";
import { courseKind } from "../courses/kind.ts";
import { dialReadingKind } from "../dial-readings/kind.ts";
import { enrolmentKind } from "../enrolments/kind.ts";
import { importKind } from "../imports/kind.ts";
import { inspectionKind } from "../inspections/kind.ts";
import { jobKind } from "../jobs/kind.ts";
import { keyKind } from "../keys/kind.ts";
import { loanKind } from "../loans/kind.ts";
import { personKind } from "../people/kind.ts";
import { photographKind } from "../photographs/kind.ts";
import { placeKind } from "../places/kind.ts";
import { planKind } from "../plans/kind.ts";
import { profileKind } from "../profiles/kind.ts";
import { qualificationKind } from "../qualifications/kind.ts";
import { reservationKind } from "../reservations/kind.ts";
import { routerKind } from "../routers/kind.ts";
import { runOutKind } from "../run-out-readings/kind.ts";
import { sharpeningKind } from "../sharpenings/kind.ts";
import { shopPolicyKind } from "../shop-policy/kind.ts";
import { signingKeyKind } from "../signing/kind.ts";
import { trialKind } from "../speed-trials/kind.ts";
import { useKind } from "../uses/kind.ts";

/** Every kind of record that the service keeps, one line each. */
export const KINDS = [
  bitKind,
  placeKind,
  photographKind,
  loanKind,
  inspectionKind,
  sharpeningKind,
  routerKind,
  colletKind,
  dialReadingKind,
  runOutKind,
  trialKind,
  useKind,
  importKind,
  planKind,
  profileKind,
  jobKind,
  reservationKind,
  shopPolicyKind,
  personKind,
  keyKind,
  courseKind,
  enrolmentKind,
  qualificationKind,
  approvalKind,
  lapseKind,
  groundsKind,
  checkKind,
  checkpointKind,
  signingKeyKind,
] as const;

/** The name of a kind of record. */
export type KindType = (typeof KINDS)[number]["type"];
