import { merged } from "../http/fields.ts";
import { Problem } from "../problems/problem.ts";
import { creation, type Decision, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { personKind } from "./kind.ts";
import type { NewPerson, PersonChange, PersonRecord } from "./schema.ts";

/** Somebody new in the shop. `salt` is random and theirs alone. */
export function createPerson(id: string, given: NewPerson, salt: string, at: string): Decision<PersonRecord> {
  const record: PersonRecord = newRecord(id, { ...given, state: "active" as const, salt }, at);
  return { record, changes: [creation(personKind, record)] };
}

/** A person's next state. */
export function changePerson(
  current: PersonRecord,
  change: PersonChange,
  at: string,
): Decision<PersonRecord> {
  if (current.erasedAt !== undefined) {
    throw new Problem(
      "invalid-state",
      `Person ${current.id} was erased at ${current.erasedAt}. Enter them again instead.`,
    );
  }
  const record = nextVersion(merged<PersonRecord>(current, change), at);
  return { record, changes: [replacement(personKind, current, record)] };
}

/** What is called by this once it is erased. */
const ERASED_NAME = "Erased person";

/** Erases who somebody is: name, notes and what other programs call them, and the salt without which nothing shows that the history means them. They have left. */
export function erasePerson(current: PersonRecord, at: string): Decision<PersonRecord> {
  if (current.erasedAt !== undefined) return { record: current, changes: [] };
  const { notes: _notes, externalId: _externalId, salt: _salt, ...rest } = nextVersion(current, at);
  const record: PersonRecord = { ...rest, name: ERASED_NAME, state: "left", erasedAt: at };
  return { record, changes: [replacement(personKind, current, record, "erased")] };
}

/** Whether a change takes a manager's power away: another manager must be left. */
export function endsManager(current: PersonRecord, next: PersonRecord): boolean {
  return manages(current) && !manages(next);
}

function manages({ role, state }: PersonRecord): boolean {
  return role === "manager" && state === "active";
}
