import {
  believableRpm,
  type DialSpeed,
  DomainError,
  dialSpeeds,
  type Policy,
  type Router,
  runOutFaults,
  trialOutcome,
} from "@rimwise/domain";
import type { BitRecord } from "../bits/schema.ts";
import { requireUsable } from "../bits/standing.ts";
import { withoutUndefined } from "../http/given.ts";
import { happenedAt } from "../http/moment.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import { creation, type Decision, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { trialKind } from "./kind.ts";
import type { NewTrial, TrialRecord } from "./schema.ts";

/** A trial as it is kept: a mark's speed is what the router's dial says now, a measured vibration decides the outcome. */
export function enterTrial(
  id: string,
  bit: BitRecord,
  router: Router,
  given: NewTrial,
  policy: Policy,
  personId: string | undefined,
  at: string,
): Decision<TrialRecord> {
  requireUsable(bit);
  const unlikely = runOutFaults(given.runOutMm);
  if (unlikely.length > 0) throw new DomainError(unlikely);
  const { bitId, routerId, mark, vibrationMmPerS, runOutMm, notes } = given;
  const fields = withoutUndefined({
    bitId,
    routerId,
    personId,
    triedAt: happenedAt(given.triedAt, at, "/triedAt"),
    mark,
    rpm: speedOf(given, router, policy),
    outcome: outcomeOf(given, policy),
    vibrationMmPerS,
    runOutMm,
    notes,
  });
  const record = newRecord(id, fields, at);
  return { record, changes: [creation(trialKind, record)] };
}

/** A trial that no longer counts, and why. It stays on the books. */
export function setTrialAside(current: TrialRecord, reason: string, at: string): Decision<TrialRecord> {
  const record = { ...nextVersion(current, at), setAside: { at, reason } };
  return { record, changes: [replacement(trialKind, current, record, "set-aside")] };
}

function speedOf({ mark, rpm }: NewTrial, router: Router, policy: Policy): number {
  if ((mark === undefined) === (rpm === undefined)) {
    throw notValid([
      fault(
        "/rpm",
        "Say at which speed: its mark or its speed.",
        "either a mark of the dial or the speed in rpm",
      ),
    ]);
  }
  const speeds = dialSpeeds(router, policy);
  if (rpm !== undefined) return requireOfRouter(rpm, router, speeds);
  const setting = speeds.find((each) => each.mark === mark);
  if (setting !== undefined) return setting.rpm;
  const marks = speeds.flatMap((each) => each.mark ?? []);
  const accepted =
    marks.length > 0
      ? `a mark from ${marks[0]} to ${marks.at(-1)}`
      : "rpm: this router has no dial described";
  throw notValid([fault("/mark", "The router's dial has no such mark.", accepted)]);
}

/** A speed that was read must be one that the router can run at, by its plate or by its dial. */
function requireOfRouter(rpm: number, router: Router, speeds: readonly DialSpeed[]): number {
  const plate = believableRpm(router);
  const min = Math.min(plate.min, ...speeds.map((each) => each.rpm));
  const max = Math.max(plate.max, ...speeds.map((each) => each.rpmHighest));
  if (rpm >= min && rpm <= max) return rpm;
  const accepted = `${Math.ceil(min)} to ${Math.floor(max)}`;
  throw notValid([fault("/rpm", "This router does not run at this speed. Read it again.", accepted)]);
}

function outcomeOf({ outcome, vibrationMmPerS }: NewTrial, policy: Policy): TrialRecord["outcome"] {
  if (vibrationMmPerS === undefined) {
    if (outcome !== undefined) return outcome;
    throw notValid([fault("/outcome", "Say what it did.", "ran-free, shook, or a measured vibrationMmPerS")]);
  }
  const measured = trialOutcome(vibrationMmPerS, policy);
  // Somebody who felt it shake is believed over an instrument that did not.
  return outcome === "shook" ? outcome : measured;
}

function fault(pointer: string, message: string, accepted: string): FieldFault {
  return { in: "body", pointer, message, accepted };
}
