import type { BitRecord } from "../bits/schema.ts";
import { Problem } from "../problems/problem.ts";
import { describeInstead, freeInstead } from "../reservations/alike.ts";
import { dayOf, inTheWay } from "../reservations/days.ts";
import { reservations } from "../reservations/reads.ts";
import type { Question } from "../store/query.ts";
import type { LoanRecord } from "./schema.ts";

/** Refuses a loan over days for which the bit is kept for a job that it is not for, and names bits that would do as well. */
export function* requireNotKept(bit: BitRecord, loan: LoanRecord): Question<void> {
  const days = { from: dayOf(loan.createdAt), until: dayOf(loan.dueAt) };
  const [kept] = inTheWay(yield* reservations.keptOf(bit.id), days, loan);
  if (kept === undefined) return;
  const free = describeInstead(yield* freeInstead(bit, days));
  throw new Problem(
    "bit-kept",
    `Bit ${bit.id} is kept for job ${kept.jobId} from ${kept.from} to ${kept.until}. ${free} For that job, send its jobId; else bring it back before ${kept.from}.`,
  );
}
