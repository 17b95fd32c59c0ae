import { merged } from "../http/fields.ts";
import { creation, nextVersion, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import type { NewPerson, PersonChange, PersonRecord } from "./schema.ts";

type Decision = { readonly record: PersonRecord; readonly change: Change };

/** Somebody new in the shop. */
export function createPerson(id: string, given: NewPerson, at: string): Decision {
  const record: PersonRecord = { ...given, state: "active", id, createdAt: at, updatedAt: at, version: 1 };
  return { record, change: creation("person", record) };
}

/** A person's next state. */
export function changePerson(current: PersonRecord, change: PersonChange, at: string): Decision {
  const record = nextVersion(merged<PersonRecord>(current, change), at);
  return { record, change: replacement("person", current, record) };
}

/** Whether a change takes a manager's power away: another manager must be left. */
export function endsManager(current: PersonRecord, next: PersonRecord): boolean {
  return manages(current) && !manages(next);
}

function manages({ role, state }: PersonRecord): boolean {
  return role === "manager" && state === "active";
}
