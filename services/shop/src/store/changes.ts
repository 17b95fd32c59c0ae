import { hash } from "node:crypto";
import { canonicalText } from "./canonical.ts";
import type { Kept, Kind, RecordOf } from "./kind.ts";
import type { Change, Create, Expectation, Remove, Replace } from "./port.ts";

/** A record's fields without what every record has. */
export type FieldsOf<K extends Kind> = Omit<RecordOf<K>, keyof Kept>;

/** What was decided: the record as it is then, every change that this takes, and what must still hold when it is written. */
export type Decision<Decided> = {
  readonly record: Decided;
  readonly changes: readonly Change[];
  readonly expects?: readonly Expectation[];
};

/** A new record of a kind: version 1, created and changed now. */
export function newRecord<Fields extends object>(id: string, fields: Fields, at: string): Fields & Kept {
  // Not spread: with members after it that takes V8 thirty times as long, and racks are imported by the thousand.
  return Object.assign({}, fields, { id, createdAt: at, updatedAt: at, version: 1 });
}

/** A new record with the event that it was created. `shown` is what the event may say of it. Default: what its kind shows. */
export function creation<K extends Kind>(
  kind: K,
  record: RecordOf<K>,
  shown: object = shownOf(kind, record),
): Create<K> {
  const data = { after: withoutPrivate(kind, record, shown) };
  return { action: "create", kind, record, event: { type: `${kind.type}.created`, data } };
}

/** A record's next state with the event that says which fields changed, before and after. */
export function replacement<K extends Kind>(
  kind: K,
  before: RecordOf<K>,
  after: RecordOf<K>,
  happening = "changed",
): Replace<K> {
  const changed = changedNames(before, after);
  const data = {
    before: withoutPrivate(kind, before, shownOf(kind, only(before, changed))),
    after: withoutPrivate(kind, after, shownOf(kind, only(after, changed))),
  };
  const event = { type: `${kind.type}.${happening}`, data };
  return { action: "replace", kind, record: after, changed, expectedVersion: before.version, event };
}

/** A record's end with the event that keeps its last state. `shown` is what the event may say of it. */
export function removal<K extends Kind>(kind: K, record: RecordOf<K>, shown: object = record): Remove<K> {
  const event = { type: `${kind.type}.removed`, data: { before: withoutPrivate(kind, record, shown) } };
  return { action: "remove", kind, id: record.id, expectedVersion: record.version, event };
}

/** Whether a change is one of a record of this kind. */
export function isChangeOf<K extends Kind>(change: Change, kind: K): change is Change<K> {
  return change.kind.type === kind.type;
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

/** The fields that events of a kind may hold. */
function shownOf({ shown }: Kind, fields: object): object {
  return shown === undefined ? fields : only(fields, Object.keys(shown.properties));
}

const SALT = "salt";

/** What an event may say of a record: of its private fields no more than their salted digest, which erasing them leaves whole. */
function withoutPrivate({ privateFields }: Kind, record: object, shown: object): object {
  if (privateFields.length === 0) return shown;
  const hidden = Object.keys(shown).filter((name) => privateFields.includes(name) || name === SALT);
  if (hidden.length === 0) return shown;
  const salt: unknown = Reflect.get(record, SALT);
  const rest = Object.fromEntries(Object.entries(shown).filter(([name]) => !hidden.includes(name)));
  if (typeof salt !== "string") return rest;
  const privates = privateFields.map((name) => [name, Reflect.get(record, name) ?? null]);
  return { ...rest, privateDigest: `sha256:${hash("sha256", canonicalText({ salt, privates }))}` };
}
