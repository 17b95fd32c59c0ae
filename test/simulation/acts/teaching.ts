import { approvalFrom, found, isUsable, type Model } from "../model.ts";
import { type Actor, isStaff, mayTeach, type Person, PROGRAM } from "../people.ts";
import type { Scene } from "../scene.ts";
import { type Prepare, pick } from "./act.ts";

const DAY_MS = 24 * 60 * 60 * 1000;

/** What the computation alone can say of a setting whose bit is not as it was. */
const ONLY_THE_PLAN_KNOWS = ["result-changed", "may-not-run"];
const NOT_WITH_THIS_BIT = ["bit-not-usable", "may-not-run"];

/** An instructor drafts a setting for a course. */
export function draft(who: Actor, course: number, planIndex: number, days: number): Prepare {
  return (model, scene) => {
    const plan = pick(scene.plans, planIndex);
    const courseId = scene.courseIds[course];
    if (plan === undefined || courseId === undefined) return undefined;
    const validUntil = new Date(model.nowMs + days * DAY_MS).toISOString();
    return {
      who,
      what: "draft",
      method: "POST",
      url: "/v1/approvals",
      body: { name: "Panels", courseId, planId: plan.id, supervision: "beside", validUntil },
      mayCome: (now) => {
        if (!isStaff(who)) return ["scope-missing"];
        if (!mayTeach(who, course)) return ["not-yours"];
        const bit = found(now.bits, plan.bitId);
        if (!isUsable(bit)) return NOT_WITH_THIS_BIT;
        return bit.changes === 0 ? ["done"] : ["done", "may-not-run"];
      },
      apply: (now, answer) => {
        now.approvals.push(approvalFrom(answer, plan, found(now.bits, plan.bitId).changes));
      },
    };
  };
}

/** An instructor issues a draft, or withdraws a setting. */
export function decide(who: Actor, approvalIndex: number, what: "issue" | "withdraw"): Prepare {
  return (model, scene) => {
    const approval = pick(model.approvals, approvalIndex);
    if (approval === undefined) return undefined;
    const { id, courseId, bitId } = approval;
    const course = scene.courseIds.indexOf(courseId);
    return {
      who,
      what,
      method: "POST",
      url: `/v1/approvals/${id}/${what}`,
      body: what === "withdraw" ? { reason: "The class is done with it." } : {},
      mayCome: (now) => {
        if (!isStaff(who)) return ["scope-missing"];
        if (what === "issue" && who === PROGRAM) return ["person-needed"];
        if (!mayTeach(who, course)) return ["not-yours"];
        return comesOf(now);
      },
      apply: (now) => {
        const own = found(now.approvals, id);
        own.state = what === "issue" ? "issued" : "withdrawn";
        own.bitChanges = found(now.bits, bitId).changes;
      },
    };

    function comesOf(now: Model): readonly string[] {
      const { state, bitChanges, validFromMs } = found(now.approvals, id);
      if (what === "withdraw") return [state === "withdrawn" ? "invalid-state" : "done"];
      const bit = found(now.bits, bitId);
      // Which of several reasons is named first is the service's to say.
      if (!isUsable(bit)) return [...NOT_WITH_THIS_BIT, "result-changed", "invalid-state"];
      if (state !== "draft") return ["invalid-state"];
      // An inspection falls due with time, and its plan says so.
      const isAsDrafted = bit.changes === bitChanges && Math.abs(now.nowMs - validFromMs) < DAY_MS;
      return isAsDrafted ? ["done"] : ["done", ...ONLY_THE_PLAN_KNOWS];
    }
  };
}

/** Somebody takes a learner into a course, or ends their part in it. */
export function enrol(who: Actor, course: number, person: Person, isEnd: boolean): Prepare {
  return (model, scene) => {
    const courseId = scene.courseIds[course] ?? "";
    const personId = scene.personIds[person];
    const enrolmentId = model.enrolled.get(partOf(scene, course, person));
    if (isEnd && enrolmentId === undefined) return undefined;
    return {
      who,
      what: isEnd ? "end enrolment" : "enrol",
      method: "POST",
      url: isEnd ? `/v1/enrolments/${enrolmentId}/end` : `/v1/courses/${courseId}/enrolments`,
      body: isEnd ? {} : { personId, part: "student" },
      mayCome: (now) => {
        if (!isStaff(who)) return ["scope-missing"];
        if (!mayTeach(who, course)) return ["not-yours"];
        return [!isEnd && now.enrolled.has(partOf(scene, course, person)) ? "enrolled-already" : "done"];
      },
      apply: (now, answer) => {
        const part = partOf(scene, course, person);
        if (!isEnd) now.enrolled.set(part, answer.id);
        else if (now.enrolled.get(part) === enrolmentId) now.enrolled.delete(part);
      },
    };
  };
}

/** How the model names somebody's part in a course. */
export function partOf({ courseIds, personIds }: Scene, course: number, person: Person): string {
  return `${courseIds[course]} ${personIds[person]}`;
}
