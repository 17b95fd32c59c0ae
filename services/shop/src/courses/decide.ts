import { merged } from "../http/fields.ts";
import { creation, nextVersion, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import type { CourseChange, CourseRecord, NewCourse } from "./schema.ts";

type Decision = { readonly record: CourseRecord; readonly change: Change };

/** A new course. */
export function createCourse(id: string, given: NewCourse, at: string): Decision {
  const record: CourseRecord = { ...given, ...endOf(given), id, createdAt: at, updatedAt: at, version: 1 };
  return { record, change: creation("course", record) };
}

/** A course's next state. */
export function changeCourse(current: CourseRecord, change: CourseChange, at: string): Decision {
  const next = nextVersion(merged<CourseRecord>(current, change), at);
  const record: CourseRecord = { ...next, ...endOf(next) };
  return { record, change: replacement("course", current, record) };
}

/** The end in UTC, so that it compares as text. */
function endOf({ endsAt }: Pick<NewCourse, "endsAt">): { readonly endsAt?: string } {
  return endsAt === undefined ? {} : { endsAt: new Date(endsAt).toISOString() };
}
