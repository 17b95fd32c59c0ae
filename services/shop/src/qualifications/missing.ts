import type { Static } from "typebox";
import type { CourseRecord } from "../courses/schema.ts";
import { daysAfter } from "../http/moment.ts";
import type { MissingCode } from "./codes.ts";
import type { QualificationRecord } from "./schema.ts";

/** One thing a person lacks for a course or a setting. */
export type Missing = {
  readonly code: Static<typeof MissingCode.schema>;
  readonly text: string;
};

/** What somebody still needs at a moment for what a course asks, and for a setting's own skill. Empty: nothing. */
export function missingFor(
  { id, requirements }: Pick<CourseRecord, "id" | "requirements">,
  skill: string | undefined,
  held: readonly QualificationRecord[],
  at: string,
): Missing[] {
  const countsHere = ({ courseId }: QualificationRecord) => courseId === undefined || courseId === id;
  const inForce = held.filter((each) => countsHere(each) && isInForce(each, at));
  const has = (
    kind: QualificationRecord["kind"],
    also: (each: QualificationRecord) => boolean = () => true,
  ) => inForce.some((each) => each.kind === kind && also(each));
  const {
    safetyTest,
    isDemonstrationNeeded: demonstration,
    isParentalConsentNeeded: parentalConsent,
    instructionMaxAgeDays,
  } = requirements;
  const missing: Missing[] = [];
  if (safetyTest && !has("safety-test", ({ scorePercent = 0 }) => scorePercent >= safetyTest.passPercent)) {
    const text = `A safety test with at least ${safetyTest.passPercent} % is missing.`;
    missing.push({ code: "safety-test-missing", text });
  }
  if (demonstration === true && !has("demonstration")) {
    missing.push({ code: "demonstration-missing", text: "A practical demonstration is missing." });
  }
  if (parentalConsent === true && !has("parental-consent")) {
    missing.push({ code: "parental-consent-missing", text: "A parent's consent is missing." });
  }
  if (instructionMaxAgeDays !== undefined && !has("instruction", isYoungerThan(instructionMaxAgeDays, at))) {
    const text = `An instruction in the last ${instructionMaxAgeDays} days is missing.`;
    missing.push({ code: "instruction-missing", text });
  }
  if (skill !== undefined && !has("demonstration", (each) => each.skill === skill)) {
    missing.push({ code: "skill-missing", text: `A demonstration of ${skill} is missing.` });
  }
  return missing;
}

/** Whether a qualification counts at a moment. */
export function isInForce({ givenAt, expiresAt, withdrawn }: QualificationRecord, at: string): boolean {
  return givenAt <= at && withdrawn === undefined && (expiresAt === undefined || expiresAt > at);
}

function isYoungerThan(days: number, at: string): (each: QualificationRecord) => boolean {
  const oldest = daysAfter(at, -days);
  return ({ givenAt }) => givenAt >= oldest;
}
