import { approvals } from "../approvals/reads.ts";
import { bits } from "../bits/reads.ts";
import { courses } from "../courses/kind.ts";
import { enrolments } from "../enrolments/kind.ts";
import { loans } from "../loans/reads.ts";
import { people } from "../people/kind.ts";
import { qualifications } from "../qualifications/kind.ts";
import { routers } from "../routers/kind.ts";
import type { Question } from "../store/query.ts";
import type { CheckFacts } from "./judge.ts";
import type { CheckRequest } from "./schema.ts";

/** A person takes part in some courses and holds some qualifications. */
const MOST_OF_A_PERSON = 500;

/** Of the approvals of a bit that ended, so many are looked through for the reason. */
const MOST_ENDED = 50;

/** Everything a check is judged by: a few reads by index, whatever else is kept. */
export function* checkFacts({ personId, bitId, routerId }: CheckRequest): Question<CheckFacts> {
  const bit = yield* bits.find(bitId);
  const parts = yield* enrolments.page("", MOST_OF_A_PERSON, { personId, endedAt: null });
  const courseIds = parts.map(({ courseId }) => courseId);
  const found = [];
  for (const id of courseIds) found.push((yield* courses.find(id)) ?? []);
  const inForce = yield* approvals.forPair(courseIds, bitId, routerId);
  const ended = inForce.length > 0 ? undefined : yield* lastEnded(courseIds, bitId, routerId);
  return {
    person: yield* people.find(personId),
    bit,
    router: yield* routers.find(routerId),
    loan: bit?.loanId === undefined ? undefined : yield* loans.find(bit.loanId),
    courses: found.flat(),
    qualifications: yield* qualifications.newest(MOST_OF_A_PERSON, { personId }),
    approvals: inForce,
    ended,
    lapse: ended && (yield* approvals.lapseOf(ended)),
  };
}

function* lastEnded(courseIds: readonly string[], bitId: string, routerId: string) {
  const ofBit = yield* approvals.newest(MOST_ENDED, { bitId });
  return ofBit.find(
    ({ routerId: where, courseId, state }) =>
      where === routerId && courseIds.includes(courseId) && (state === "lapsed" || state === "withdrawn"),
  );
}
