import { courses } from "../courses/kind.ts";
import type { Question } from "../store/query.ts";
import type { ApprovalRecord } from "./record-schema.ts";

/** An approval that ends no later than its course does. */
export function* endingWithCourse(kept: ApprovalRecord): Question<ApprovalRecord> {
  const { endsAt = kept.validUntil } = (yield* courses.find(kept.courseId)) ?? {};
  const [validUntil = endsAt] = [kept.validUntil, endsAt].sort();
  return { ...kept, validUntil };
}
