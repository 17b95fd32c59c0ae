import { bitFaults, DomainError } from "@rimwise/domain";
import { merged } from "../http/fields.ts";
import { creation, nextVersion, removal, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import type { BitChange, BitRecord, NewBit } from "./schema.ts";

type Decision = { readonly record: BitRecord; readonly change: Change };

/** A new bit on the rack. Throws DomainError where its dimensions do not fit each other. */
export function createBit(id: string, bit: NewBit, at: string): Decision {
  requireSound(bit);
  const record = { ...bit, id, createdAt: at, updatedAt: at, version: 1 };
  return { record, change: creation("bit", record) };
}

/** A bit's next state. Throws DomainError where what it would become does not fit together. */
export function changeBit(current: BitRecord, change: BitChange, at: string): Decision {
  const record = nextVersion(merged<BitRecord>(current, change), at);
  requireSound(record);
  return { record, change: replacement("bit", current, record) };
}

/** Takes a bit off the rack; its last state stays in the events. */
export function removeBit(current: BitRecord): Change {
  return removal("bit", current);
}

function requireSound(bit: NewBit): void {
  const faults = bitFaults(bit);
  if (faults.length > 0) throw new DomainError(faults);
}
