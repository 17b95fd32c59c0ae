import type { Change } from "./port.ts";
import type { Kept, Records, RecordType } from "./records.ts";

/** A new record with the event that it was created. `shown` is what the event may tell of it. */
export function creation<Type extends RecordType>(type: Type, record: Records[Type], shown: object = record) {
  return {
    action: "create",
    type,
    record,
    event: { type: `${type}.created`, data: { after: shown } },
  } as const;
}

/** A record's next state with the event that tells which fields changed, before and after. */
export function replacement<Type extends RecordType>(
  type: Type,
  before: Records[Type],
  after: Records[Type],
  happening = "changed",
) {
  const changed = changedNames(before, after);
  const data = { before: only(before, changed), after: only(after, changed) };
  const event = { type: `${type}.${happening}`, data };
  return { action: "replace", type, record: after, changed, expectedVersion: before.version, event } as const;
}

/** A record's end with the event that keeps its last state. */
export function removal(type: RecordType, record: Records[RecordType]): Change {
  const event = { type: `${type}.removed`, data: { before: record } };
  return { action: "remove", type, id: record.id, expectedVersion: record.version, event };
}

/** The id of the record that a change is of. */
export function subjectOf(change: Change): string {
  return "record" in change ? change.record.id : change.id;
}

/** The next version of a record with other fields. */
export function nextVersion<Record extends Kept>(record: Record, at: string): Record {
  return Object.assign({}, record, { version: record.version + 1, updatedAt: at });
}

function changedNames(before: object, after: object): string[] {
  const old = new Map<string, unknown>(Object.entries(before));
  const young = new Map<string, unknown>(Object.entries(after));
  return [...new Set([...old.keys(), ...young.keys()])].filter(
    (name) => JSON.stringify(old.get(name)) !== JSON.stringify(young.get(name)),
  );
}

function only(record: object, names: readonly string[]): Record<string, unknown> {
  return Object.fromEntries(Object.entries(record).filter(([name]) => names.includes(name)));
}
