import type { CourseRecord } from "../courses/schema.ts";
import { Problem } from "../problems/problem.ts";
import type { ApprovalRecord } from "./record-schema.ts";

/** Whether two persons are needed: the course asks for them now, or did when the setting was drafted. */
export function asksForTwo(
  { isTwoPerson }: Pick<ApprovalRecord, "isTwoPerson">,
  course: CourseRecord,
): boolean {
  return isTwoPerson || course.isTwoPerson;
}

/** Refuses to let one person put a setting in force. Behind a program's key may be anybody, also whoever issues. */
export function requireTwoPersons(drafterId: string | undefined, issuedBy: string): void {
  if (drafterId === undefined) {
    throw new Problem(
      "second-person-needed",
      "A program drafted it, so nobody knows who did. Draft it again with the key of a person.",
    );
  }
  if (drafterId === issuedBy) {
    throw new Problem("second-person-needed", "Another person must issue it than the one who drafted it.");
  }
}
