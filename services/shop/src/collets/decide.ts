import type { Hold } from "../bits/state-schema.ts";
import { merged } from "../http/fields.ts";
import { notValid } from "../problems/problem.ts";
import { creation, type Decision, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { colletKind } from "./kind.ts";
import type { ColletChange, ColletRecord, NewCollet } from "./schema.ts";

/** A new collet of a router. */
export function createCollet(id: string, given: NewCollet, at: string): Decision<ColletRecord> {
  const record = newRecord(id, given, at);
  return { record, changes: [creation(colletKind, record)] };
}

/** A collet's next state; with another condition than `held` a hold is over. */
export function changeCollet(
  current: ColletRecord,
  change: ColletChange,
  at: string,
): Decision<ColletRecord> {
  const { hold, ...next } = nextVersion(merged<ColletRecord>(current, change), at);
  const record: ColletRecord = { ...next, ...(next.condition === "held" && hold && { hold }) };
  return { record, changes: [replacement(colletKind, current, record)] };
}

/** Takes a collet out of use. */
export function holdCollet(current: ColletRecord, hold: Hold, at: string): Decision<ColletRecord> {
  const record: ColletRecord = { ...nextVersion(current, at), condition: "held", hold };
  return { record, changes: [replacement(colletKind, current, record, "held")] };
}

/** A collet that is named beside a router must be one of its own. */
export function requireColletOf(routerId: string, collet: ColletRecord | undefined): void {
  if (collet === undefined || collet.routerId === routerId) return;
  const accepted = "the id of a collet of that router";
  throw notValid([{ in: "body", pointer: "/colletId", message: "It is another router's.", accepted }]);
}
