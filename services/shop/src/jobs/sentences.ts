import { describeStep, type PlannedCut, type SetupRun, type StepCode, showIn } from "@rimwise/domain";
import type { JobSetupShown } from "./work-schema.ts";

const KINDS = {
  "back-rout": "a light pass with the rotation",
  rough: "a rough pass",
  finish: "the last pass",
} as const;

/** Steps of a plan that set nothing, or that the set-up says for all of its runs. */
const NOT_SETTINGS: readonly StepCode[] = [
  "mount-bit",
  "set-dial",
  "no-dial-to-set",
  "set-slowest",
  "set-fastest",
  "waste-groove",
  "run-idle",
  "cut-edges",
  "check-collet",
  "test-piece",
];

/** A set-up as the day's list shows it. */
export function describeSetup(
  { mark, rpm, runs, kind, positionMm }: Omit<JobSetupShown, "text">,
  bitName: string,
  routerName: string,
): string {
  const show = showIn("both");
  const speed = mark === null ? show.rotation(rpm) : `mark ${show.mark(mark)} (${show.rotation(rpm)})`;
  const place = positionMm === null ? "" : `, ${show.length(positionMm)} from the edge or end`;
  const pieces = runs.map(({ pieces: count, name }) => `${count} × ${name}`).join(", ");
  return `${bitName} in ${routerName} at ${speed}: ${KINDS[kind]} of ${pieces}${place}.`;
}

/** How a set-up is set, in the words of the plan of one of its runs. */
export function settingsOf({ plan }: PlannedCut, { pass }: SetupRun): JobSetupShown["settings"] {
  return plan.steps
    .filter((step) => !NOT_SETTINGS.includes(step.code))
    .filter((step) => !("pass" in step) || step.pass === undefined || step.pass === pass)
    .map((step) => ({ code: step.code, text: describeStep(step, showIn("both")) }));
}
