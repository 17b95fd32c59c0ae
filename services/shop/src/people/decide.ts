import { merged } from "../http/fields.ts";
import { creation, type Decision, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { personKind } from "./kind.ts";
import type { NewPerson, PersonChange, PersonRecord } from "./schema.ts";

/** Somebody new in the shop. */
export function createPerson(id: string, given: NewPerson, at: string): Decision<PersonRecord> {
  const record: PersonRecord = newRecord(id, { ...given, state: "active" as const }, at);
  return { record, changes: [creation(personKind, record)] };
}

/** A person's next state. */
export function changePerson(
  current: PersonRecord,
  change: PersonChange,
  at: string,
): Decision<PersonRecord> {
  const record = nextVersion(merged<PersonRecord>(current, change), at);
  return { record, changes: [replacement(personKind, current, record)] };
}

/** Whether a change takes a manager's power away: another manager must be left. */
export function endsManager(current: PersonRecord, next: PersonRecord): boolean {
  return manages(current) && !manages(next);
}

function manages({ role, state }: PersonRecord): boolean {
  return role === "manager" && state === "active";
}
