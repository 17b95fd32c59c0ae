import type { Hold } from "../bits/state-schema.ts";
import { merged } from "../http/fields.ts";
import { creation, nextVersion, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import type { ColletChange, ColletRecord, NewCollet } from "./schema.ts";

type Decision = { readonly record: ColletRecord; readonly change: Change };

/** A new collet of a router. */
export function createCollet(id: string, given: NewCollet, at: string): Decision {
  const record: ColletRecord = { ...given, id, createdAt: at, updatedAt: at, version: 1 };
  return { record, change: creation("collet", record) };
}

/** A collet's next state; with another condition than `held` a hold is over. */
export function changeCollet(current: ColletRecord, change: ColletChange, at: string): Decision {
  const { hold, ...next } = nextVersion(merged<ColletRecord>(current, change), at);
  const record: ColletRecord = { ...next, ...(next.condition === "held" && hold && { hold }) };
  return { record, change: replacement("collet", current, record) };
}

/** Takes a collet out of use. */
export function holdCollet(current: ColletRecord, hold: Hold, at: string): Decision {
  const record: ColletRecord = { ...nextVersion(current, at), condition: "held", hold };
  return { record, change: replacement("collet", current, record, "held") };
}
