import type { ApprovalRecord } from "../approvals/record-schema.ts";
import type { CourseRecord } from "../courses/schema.ts";
import { stricterOf } from "../courses/stricter.ts";
import { type Missing, missingFor } from "../qualifications/missing.ts";
import type { QualificationRecord } from "../qualifications/schema.ts";
import { USE_OUTCOMES, type UseRecord } from "../uses/schema.ts";

/** What one student lacks, and which of the settings that hold for them they may run: none while anything of the course's is missing. */
export function todayOf(
  course: CourseRecord,
  held: readonly QualificationRecord[],
  holding: readonly ApprovalRecord[],
  at: string,
): { readonly missing: Missing[]; readonly settings: ApprovalRecord[] } {
  const missing = missingFor(course, undefined, held, at);
  const isOver = course.endsAt !== undefined && course.endsAt <= at;
  const settings = isOver
    ? []
    : holding.filter((approval) => {
        const requirements = stricterOf(course.requirements, approval.requirements);
        return missingFor({ id: course.id, requirements }, approval.skill, held, at).length === 0;
      });
  return { missing, settings };
}

/** What a class's uses come to, bit by bit, the most used first. */
export function usageOf(uses: readonly UseRecord[]) {
  const byBit = new Map<string, UseRecord[]>();
  for (const use of uses) byBit.set(use.bitId, [...(byBit.get(use.bitId) ?? []), use]);
  return [...byBit]
    .map(([bitId, ofBit]) => ({
      bitId,
      uses: ofBit.length,
      metres: sum(ofBit.map(({ metres }) => metres)),
      minutes: sum(ofBit.map(({ minutes }) => minutes)),
      outcomes: Object.fromEntries(
        USE_OUTCOMES.map((outcome) => [
          outcome,
          ofBit.filter(({ outcomes }) => outcomes.includes(outcome)).length,
        ]),
      ),
    }))
    .sort((a, b) => b.minutes - a.minutes);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
