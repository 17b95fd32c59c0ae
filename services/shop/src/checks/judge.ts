import type { ApprovalRecord, LapseRecord } from "../approvals/record-schema.ts";
import { stateAt } from "../approvals/state.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { CourseRecord } from "../courses/schema.ts";
import { stricterOf } from "../courses/stricter.ts";
import type { LoanRecord } from "../loans/schema.ts";
import type { PersonRecord } from "../people/schema.ts";
import { missingFor } from "../qualifications/missing.ts";
import type { QualificationRecord } from "../qualifications/schema.ts";
import type { RouterRecord } from "../routers/schema.ts";
import type { CheckRequest, ReasonWhyNot as Reason } from "./schema.ts";

/** What is known when a check is asked. Whatever is not known is a reason why not. */
export type CheckFacts = {
  readonly person: PersonRecord | undefined;
  readonly bit: BitRecord | undefined;
  readonly router: RouterRecord | undefined;
  /** The loan the bit is out on. */
  readonly loan: LoanRecord | undefined;
  /** Courses the person takes part in. */
  readonly courses: readonly CourseRecord[];
  readonly qualifications: readonly QualificationRecord[];
  /** Settings of those courses that hold now for the bit in the router. */
  readonly approvals: readonly ApprovalRecord[];
  /** If none holds: the one for the two that came nearest, and why it lapsed if it did. */
  readonly nearest: ApprovalRecord | undefined;
  readonly lapse: LapseRecord | undefined;
};

export type Judgement = {
  readonly reasons: readonly Reason[];
  /** The setting that allows it, or that came nearest. */
  readonly approval: ApprovalRecord | undefined;
};

/** Whether a person may run a bit in a router at a mark at a moment: no reason why not, and a setting that says so. Pure. */
export function judgeCheck(asked: CheckRequest, facts: CheckFacts, at: string): Judgement {
  const general = [...personReasons(facts), ...bitReasons(asked, facts), ...routerReasons(facts)];
  const issued = facts.nearest?.state === "issued" ? [facts.nearest] : [];
  const judged = [...facts.approvals, ...issued]
    .map((approval) => ({ approval, reasons: settingReasons(asked, approval, facts, at) }))
    .sort((a, b) => a.reasons.length - b.reasons.length);
  const [nearest] = judged;
  if (nearest === undefined)
    return { reasons: [...general, ...noSettingReasons(facts)], approval: facts.nearest };
  return { reasons: [...general, ...nearest.reasons], approval: nearest.approval };
}

function personReasons({ person, courses }: CheckFacts): Reason[] {
  if (person === undefined) return [reason("person-unknown", "Nobody of this id uses the shop.")];
  if (person.state === "left") return [reason("person-left", "This person has left.")];
  return courses.length > 0 ? [] : [reason("no-course", "This person takes part in no course.")];
}

function bitReasons({ personId }: CheckRequest, { bit, loan }: CheckFacts): Reason[] {
  if (bit === undefined) return [reason("bit-unknown", "There is no such bit.")];
  if (bit.retirement !== undefined)
    return [reason("bit-retired", `The bit is retired: ${bit.retirement.reason}`)];
  if (bit.hold !== undefined) return [reason("bit-held", `The bit is held: ${bit.hold.reason}`)];
  if (bit.sentToSharpeningAt !== undefined) return [reason("bit-away", "The bit is away at sharpening.")];
  const isElsewhere = bit.loanId !== undefined && loan?.personId !== personId;
  return isElsewhere ? [reason("bit-on-loan", "The bit is on loan to somebody else.")] : [];
}

function routerReasons({ router }: CheckFacts): Reason[] {
  return router === undefined ? [reason("router-unknown", "There is no such router.")] : [];
}

function settingReasons(
  { personId, mark, woodId, mounting }: CheckRequest,
  approval: ApprovalRecord,
  { courses, qualifications }: CheckFacts,
  at: string,
): Reason[] {
  const reasons: Reason[] = [];
  const course = courses.find(({ id }) => id === approval.courseId);
  const { setting } = approval;
  if (approval.validFrom > at)
    reasons.push(reason("approval-not-yet", `The approval holds from ${approval.validFrom}.`));
  if (stateAt(approval, at) === "expired") {
    reasons.push(reason("approval-expired", `The approval held until ${approval.validUntil}.`));
  }
  if ((mark ?? null) !== setting.mark) {
    // A router whose dial is not described may turn slower or faster than this: the speed says which was approved.
    const approved = setting.mark === null ? `${setting.rpm} rpm, and no mark` : `mark ${setting.mark}`;
    reasons.push(reason("other-mark", `The approval is for ${approved}.`));
  }
  if (woodId !== undefined && !approval.woodIds.includes(woodId)) {
    reasons.push(reason("other-wood", `The approval is for ${approval.woodIds.join(", ")}.`));
  }
  if (mounting !== undefined && mounting !== approval.mounting) {
    reasons.push(
      reason(
        "other-mounting",
        `The approval is for ${approval.mounting === "table" ? "a table" : "a handheld router"}.`,
      ),
    );
  }
  if (approval.personIds !== undefined && !approval.personIds.includes(personId)) {
    reasons.push(reason("not-for-this-person", "The approval is for other students."));
  }
  if (course === undefined)
    return [...reasons, reason("no-course", "This person is not in the approval's course.")];
  if (course.endsAt !== undefined && course.endsAt <= at)
    reasons.push(reason("course-over", "The course is over."));
  const requirements = stricterOf(course.requirements, approval.requirements);
  return [...reasons, ...missingFor({ id: course.id, requirements }, approval.skill, qualifications, at)];
}

function noSettingReasons({ nearest: ended, lapse }: CheckFacts): Reason[] {
  if (ended === undefined) {
    return [
      reason("no-approval", "No approval is issued for this bit in this router in the person's courses."),
    ];
  }
  if (ended.state === "lapsed") {
    return [
      reason("approval-lapsed", `The approval lapsed: ${lapse?.reason ?? "what it rests on changed."}`),
    ];
  }
  return [reason("approval-withdrawn", `The approval was withdrawn: ${ended.withdrawal?.reason ?? ""}`)];
}

function reason(code: Reason["code"], text: string): Reason {
  return { code, text };
}
