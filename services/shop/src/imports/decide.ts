import { DomainError, describeFault, type Policy } from "@rimwise/domain";
import { changeBit, createBit } from "../bits/decide.ts";
import { bitKind } from "../bits/kind.ts";
import { columnsUnder } from "../bits/query-columns.ts";
import { BIT_FIELD_NAMES, type BitRecord, type NewBit } from "../bits/schema.ts";
import { canonicalText } from "../store/canonical.ts";
import { creation, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import { shortened } from "./cells.ts";
import { columnAt } from "./columns.ts";
import type { Row, RowContent, RowFault } from "./rows.ts";

/** What comes of one row. */
export type RowDecision =
  | (Decided & { readonly kind: "created"; readonly isNewId: boolean })
  | (Decided & { readonly kind: "changed"; readonly before: BitRecord })
  | { readonly kind: "unchanged" }
  | { readonly kind: "refused"; readonly faults: readonly RowFault[] };

type Decided = {
  readonly record: BitRecord;
  /** Made here, because making them takes longer than all the writing. */
  readonly queryColumns: ReturnType<typeof columnsUnder>;
};

/** A decision to write something. */
export type Written = Extract<RowDecision, { kind: "created" | "changed" }>;

/** Reads a value as a bit by its schema: the bit, or what is wrong with it, each fault with its JSON Pointer. */
export type ReadBit = (
  value: unknown,
) => { readonly bit: NewBit } | { readonly faults: readonly PointedFault[] };

/** What a row is decided by beside the kept bit. */
export type RowGrounds = {
  readonly readBit: ReadBit;
  readonly newId: () => string;
  readonly at: string;
  readonly policy: Policy;
};

type PointedFault = { readonly pointer: string; readonly message: string; readonly accepted: string };
type Draft = Readonly<Record<string, unknown>>;

/**
 * Decides a row that could be read: a bit that is not kept yet is created, under its own id if it has one; a kept one becomes
 * what the row says of it. `current` is the kept bit with the row's id.
 */
export function decideRow(
  { id, content, faults: unread }: Extract<Row, { kind: "row" }>,
  current: BitRecord | undefined,
  by: RowGrounds,
): RowDecision {
  const { readBit, newId, at, policy } = by;
  const refused = (found: readonly PointedFault[]): RowDecision => {
    const about = new Set(unread.map(({ column }) => column));
    const others = found.map((fault) => named(fault, content)).filter(({ column }) => !about.has(column));
    return { kind: "refused", faults: [...unread, ...others] };
  };
  const read = readBit(draftOf(content, current));
  if ("faults" in read) return refused(read.faults);
  const { bit } = read;
  try {
    if (unread.length > 0) {
      createBit(id ?? newId(), bit, at, policy);
      return refused([]);
    }
    if (current !== undefined) return changed(current, bit, by);
    const { record } = createBit(id ?? newId(), bit, at, policy);
    const queryColumns = columnsUnder(record, policy);
    return { kind: "created", record, queryColumns, isNewId: id === undefined };
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return refused(error.faults.map((fault) => ({ pointer: fault.pointer, ...describeFault(fault) })));
  }
}

/** What a decision writes. */
export function rowChange(decision: Written) {
  const { record } = decision;
  return decision.kind === "created"
    ? creation(bitKind, record)
    : replacement(bitKind, decision.before, record);
}

/** The same with its columns as they were made: only if the policy is still the one they were made under. */
export function stagedChange(decision: Written): Change {
  return { ...rowChange(decision), queryColumns: decision.queryColumns };
}

function changed(current: BitRecord, bit: NewBit, { at, policy }: RowGrounds): RowDecision {
  const before = fieldsOf(current);
  if (canonicalText(before) === canonicalText(bit)) return { kind: "unchanged" };
  const removed = Object.keys(before).filter((name) => !(name in bit));
  const change = { ...bit, ...Object.fromEntries(removed.map((name) => [name, null])) };
  const { record } = changeBit(current, change, at, policy);
  return { kind: "changed", before: current, record, queryColumns: columnsUnder(record, policy) };
}

/** A kept bit without what only its history changes: what files hold of it. */
export function fieldsOf(record: BitRecord): Draft {
  return Object.fromEntries(Object.entries(record).filter(([name]) => BIT_FIELD_NAMES.includes(name)));
}

/** A line of JSON says all of a bit. A row of columns says nothing of the columns it does not have. */
function draftOf(content: RowContent, current: BitRecord | undefined): Draft {
  if (content.kind === "whole") return { ...content.bit };
  const values = [...content.values];
  const fields = new Map(Object.entries(current === undefined ? {} : fieldsOf(current)));
  for (const [{ path }, value] of values) if (path.length === 1) put(fields, path[0], value);
  const kind = values.find(([{ name }]) => name === "kind")?.[1];
  const isOtherForm = kind !== undefined && kind !== current?.form.kind;
  const form = isOtherForm ? {} : current?.form;
  put(fields, "form", nested("form", form, content) ?? {});
  put(fields, "cost", nested("cost", current?.cost, content));
  return Object.fromEntries(fields);
}

function nested(
  parent: string,
  kept: object | undefined,
  { values }: Extract<RowContent, { kind: "columns" }>,
): object | undefined {
  const fields = new Map<string, unknown>(Object.entries(kept ?? {}));
  for (const [{ path }, value] of values) {
    if (path.length === 2 && path[0] === parent) put(fields, path[1], value);
  }
  return fields.size === 0 ? undefined : Object.fromEntries(fields);
}

function put(fields: Map<string, unknown>, name: string, value: unknown): void {
  if (value === undefined) fields.delete(name);
  else fields.set(name, value);
}

function named({ pointer, message, accepted }: PointedFault, content: RowContent): RowFault {
  const column = content.kind === "whole" ? pointer : columnAt(pointer)?.name;
  const given = content.kind === "whole" ? valueAt(content.bit, pointer) : content.given.get(column ?? "");
  return {
    ...(column !== undefined && { column }),
    message,
    accepted,
    ...(given !== undefined && given !== "" && { given: shortened(given) }),
  };
}

/** What a JSON Pointer (RFC 6901) leads to, as text; undefined when there is nothing. */
function valueAt(value: unknown, pointer: string): string | undefined {
  let found: unknown = value;
  for (const step of pointer.split("/").slice(1)) {
    if (typeof found !== "object" || found === null) return undefined;
    found = Reflect.get(found, step.replaceAll("~1", "/").replaceAll("~0", "~"));
  }
  return found === undefined ? undefined : (JSON.stringify(found) ?? "");
}
