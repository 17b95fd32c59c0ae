import type { CourseRecord } from "../courses/schema.ts";
import { notValid, Problem } from "../problems/problem.ts";

const LONGEST_MS = 2 * 366 * 24 * 60 * 60 * 1000;

/** From when until when: not longer than the course, nor than the readings it rests on. */
export function validity(
  from: string | undefined,
  until: string,
  { endsAt }: CourseRecord,
  readingsUntil: string | undefined,
  at: string,
): { readonly validFrom: string; readonly validUntil: string } {
  const validFrom = new Date(from ?? at).toISOString();
  const asked = new Date(until);
  if (asked.toISOString() <= validFrom || asked.toISOString() <= at) {
    throw notValid([fault("It would be over before it begins.", "a time after now and after validFrom")]);
  }
  if (asked.getTime() > new Date(at).getTime() + LONGEST_MS) {
    throw notValid([fault("That is too far away.", "a time within two years")]);
  }
  const ends = [asked.toISOString(), endsAt, readingsUntil].filter((each) => each !== undefined).sort();
  const validUntil = ends[0] ?? asked.toISOString();
  if (validUntil > at) return { validFrom, validUntil };
  throw new Problem("course-over", "The course, or a reading that this rests on, has run out.");
}

function fault(message: string, accepted: string) {
  return { in: "body", pointer: "/validUntil", message, accepted } as const;
}
