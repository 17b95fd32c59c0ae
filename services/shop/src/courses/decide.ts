import { merged } from "../http/fields.ts";
import { creation, type Decision, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { courseKind } from "./kind.ts";
import type { CourseChange, CourseRecord, NewCourse } from "./schema.ts";

/** A new course. */
export function createCourse(id: string, given: NewCourse, at: string): Decision<CourseRecord> {
  const record: CourseRecord = newRecord(id, { ...given, ...endOf(given) }, at);
  return { record, changes: [creation(courseKind, record)] };
}

/** A course's next state. */
export function changeCourse(
  current: CourseRecord,
  change: CourseChange,
  at: string,
): Decision<CourseRecord> {
  const next = nextVersion(merged<CourseRecord>(current, change), at);
  const record: CourseRecord = { ...next, ...endOf(next) };
  return { record, changes: [replacement(courseKind, current, record)] };
}

/** The end in UTC, so that it compares as text. */
function endOf({ endsAt }: Pick<NewCourse, "endsAt">): { readonly endsAt?: string } {
  return endsAt === undefined ? {} : { endsAt: new Date(endsAt).toISOString() };
}
