import type { Policy } from "@rimwise/domain";
import type { BitRecord } from "../bits/schema.ts";
import { clockSlackBefore, daysAfter } from "../http/moment.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import type { UseRecord } from "./schema.ts";

/** Nobody works longer in one go. */
const LONGEST_MINUTES = 24 * 60;

type Allowed = Pick<Policy, "loggedUseMaxAgeDays" | "loggedFeedMaxMPerMin">;

/**
 * Refuses what somebody who is not in charge cannot have done or cannot vouch for: faster than wood is fed by hand, longer than a
 * day in one go, before the bit was here, or long ago. Whoever is in charge may enter old notes and work with a power feeder.
 */
export function requirePlausible(
  { metres, minutes, doneAt }: UseRecord,
  { createdAt }: BitRecord,
  { loggedUseMaxAgeDays, loggedFeedMaxMPerMin }: Allowed,
  at: string,
): void {
  const faults: FieldFault[] = [];
  if (metres > minutes * loggedFeedMaxMPerMin) {
    const accepted = `at most ${loggedFeedMaxMPerMin} metres for each minute`;
    faults.push(fault("/metres", "That is faster than wood is fed by hand.", accepted));
  }
  if (minutes > LONGEST_MINUTES) {
    faults.push(fault("/minutes", "That is longer than a day.", `at most ${LONGEST_MINUTES}, in one go`));
  }
  if (doneAt < clockSlackBefore(createdAt)) {
    faults.push(fault("/doneAt", "The bit was not here yet.", `a time since it was entered, ${createdAt}`));
  } else if (doneAt < daysAfter(at, -loggedUseMaxAgeDays)) {
    const accepted = `a time in the last ${loggedUseMaxAgeDays} days; somebody in charge may log older work`;
    faults.push(fault("/doneAt", "That is too long ago.", accepted));
  }
  if (faults.length > 0) throw notValid(faults);
}

function fault(pointer: string, message: string, accepted: string): FieldFault {
  return { in: "body", pointer, message, accepted };
}
