import type { ApprovalReads } from "../approvals/reads.ts";
import type { BitReads } from "../bits/reads.ts";
import type { RecordReads } from "../store/record-reads.ts";
import type { CheckFacts } from "./judge.ts";
import type { CheckRequest } from "./schema.ts";

export type CheckSources = {
  readonly approvals: ApprovalReads;
  readonly bits: BitReads;
  readonly routers: RecordReads<"router">;
  readonly people: RecordReads<"person">;
  readonly courses: RecordReads<"course">;
  readonly enrolments: RecordReads<"enrolment">;
  readonly qualifications: RecordReads<"qualification">;
  readonly loans: RecordReads<"loan">;
};

/** A person takes part in some courses and holds some qualifications. */
const MOST_OF_A_PERSON = 500;

/** Of the settings of a bit that ended, so many are looked through for the reason. */
const MOST_ENDED = 50;

/** Everything a check is judged by: a few reads by index, whatever else is kept. */
export async function checkFacts(
  { personId, bitId, routerId }: CheckRequest,
  sources: CheckSources,
): Promise<CheckFacts> {
  const { approvals, bits, routers, people, courses, enrolments, qualifications, loans } = sources;
  const [person, bit, router, parts, held] = await Promise.all([
    people.find(personId),
    bits.find(bitId),
    routers.find(routerId),
    enrolments.page("", MOST_OF_A_PERSON, { personId, endedAt: null }),
    qualifications.newest(MOST_OF_A_PERSON, { personId }),
  ]);
  const courseIds = parts.map(({ courseId }) => courseId);
  const [found, inForce, loan] = await Promise.all([
    Promise.all(courseIds.map(courses.find)),
    approvals.forPair(courseIds, bitId, routerId),
    bit?.loanId === undefined ? undefined : loans.find(bit.loanId),
  ]);
  const ended = inForce.length > 0 ? undefined : await lastEnded();
  return {
    person,
    bit,
    router,
    loan,
    courses: found.flatMap((course) => course ?? []),
    qualifications: held,
    approvals: inForce,
    ended,
    lapse: ended && (await approvals.lapseOf(ended)),
  };

  async function lastEnded() {
    const ofBit = await approvals.newest(MOST_ENDED, { bitId });
    return ofBit.find(
      ({ routerId: where, courseId, state }) =>
        where === routerId && courseIds.includes(courseId) && (state === "lapsed" || state === "withdrawn"),
    );
  }
}
