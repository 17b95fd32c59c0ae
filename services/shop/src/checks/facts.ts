import { approvals } from "../approvals/reads.ts";
import { bits } from "../bits/reads.ts";
import { courses } from "../courses/kind.ts";
import { enrolments } from "../enrolments/kind.ts";
import { loans } from "../loans/reads.ts";
import { people } from "../people/kind.ts";
import { qualificationsCounting } from "../qualifications/reads.ts";
import { routers } from "../routers/kind.ts";
import type { Question } from "../store/query.ts";
import type { CheckFacts } from "./judge.ts";
import type { CheckRequest } from "./schema.ts";

/** A person takes part in some courses. */
const MOST_OF_A_PERSON = 500;

/** Of a course's approvals for a bit in a router that do not hold, so many are looked through for the reason. */
const MOST_LOOKED_THROUGH = 50;

/** Everything a check is judged by at a moment: a few reads by index, whatever else is kept. */
export function* checkFacts({ personId, bitId, routerId }: CheckRequest, at: string): Question<CheckFacts> {
  const bit = yield* bits.find(bitId);
  const parts = yield* enrolments.page("", MOST_OF_A_PERSON, { personId, endedAt: null });
  const courseIds = parts.map(({ courseId }) => courseId);
  const found = [];
  for (const id of courseIds) found.push((yield* courses.find(id)) ?? []);
  const holding = yield* approvals.forPair(courseIds, bitId, routerId, at);
  const nearest = holding.length > 0 ? undefined : yield* nearestOf(courseIds, bitId, routerId);
  return {
    person: yield* people.find(personId),
    bit,
    router: yield* routers.find(routerId),
    loan: bit?.loanId === undefined ? undefined : yield* loans.find(bit.loanId),
    courses: found.flat(),
    qualifications: yield* qualificationsCounting(personId, at),
    approvals: holding,
    nearest,
    lapse: nearest && (yield* approvals.lapseOf(nearest)),
  };
}

/** Of what does not hold, the one to give as the reason: what is issued for another time, else what ended last. */
function* nearestOf(courseIds: readonly string[], bitId: string, routerId: string) {
  const found = [];
  for (const courseId of courseIds) {
    found.push(...(yield* approvals.newest(MOST_LOOKED_THROUGH, { courseId, bitId, routerId })));
  }
  const newestFirst = found.sort((a, b) => (a.id < b.id ? 1 : -1));
  return (
    newestFirst.find(({ state }) => state === "issued") ??
    newestFirst.find(({ state }) => state === "lapsed" || state === "withdrawn")
  );
}
