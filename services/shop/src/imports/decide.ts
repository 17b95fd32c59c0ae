import { DomainError, describeFault, type Policy } from "@rimwise/domain";
import { changeBit, createBit } from "../bits/decide.ts";
import { bitKind } from "../bits/kind.ts";
import { columnsUnder } from "../bits/query-columns.ts";
import { BIT_FIELD_NAMES, type BitRecord, type NewBit } from "../bits/schema.ts";
import { canonicalText } from "../store/canonical.ts";
import { creation, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
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
  { id, content }: Extract<Row, { kind: "row" }>,
  current: BitRecord | undefined,
  by: RowGrounds,
): RowDecision {
  const { readBit, newId, at, policy } = by;
  const read = readBit(draftOf(content, current));
  if ("faults" in read) return { kind: "refused", faults: read.faults.map((fault) => named(fault, content)) };
  const { bit } = read;
  try {
    if (current !== undefined) return changed(current, bit, by);
    const { record } = createBit(id ?? newId(), bit, at, policy);
    const queryColumns = columnsUnder(record, policy);
    return { kind: "created", record, queryColumns, isNewId: id === undefined };
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    const pointed = error.faults.map((fault) => ({ pointer: fault.pointer, ...describeFault(fault) }));
    return { kind: "refused", faults: pointed.map((fault) => named(fault, content)) };
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

function named({ pointer, message, accepted }: PointedFault, { kind }: RowContent): RowFault {
  const column = kind === "whole" ? pointer : columnAt(pointer)?.name;
  return { ...(column !== undefined && { column }), message, accepted };
}
