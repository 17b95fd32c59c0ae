import { bitFaults, DomainError, smallestUsableFaults } from "@rimwise/domain";
import { merged } from "../http/fields.ts";
import { withoutUndefined } from "../http/given.ts";
import { Problem } from "../problems/problem.ts";
import { creation, type Decision, newRecord, nextVersion, removal, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import { bitKind } from "./kind.ts";
import type { BitChange, BitRecord, NewBit } from "./schema.ts";
import { type InspectionPolicy, inspectionDue, newStanding, settled } from "./standing.ts";
import type { BitStanding } from "./state-schema.ts";
import { hasOtherSize, holdIfTooSmall } from "./too-small.ts";

/**
 * A new bit on the rack, held when it is smaller than it may be used. Throws DomainError when its dimensions do not fit each
 * other.
 */
export function createBit(
  id: string,
  bit: NewBit,
  at: string,
  policy: InspectionPolicy,
): Decision<BitRecord> {
  requireSound(bit);
  const fields = Object.assign({}, bit, newStanding(bit, at, policy), holdIfTooSmall(bit, at));
  const record = settled(newRecord(id, fields, at));
  return { record, changes: [creation(bitKind, record)] };
}

/**
 * A bit's next state, held when it becomes smaller than it may be used. Throws DomainError when what it would become does not
 * fit together.
 */
export function changeBit(
  current: BitRecord,
  change: BitChange,
  at: string,
  policy: InspectionPolicy,
): Decision<BitRecord> {
  const next = nextVersion(merged<BitRecord>(current, change), at);
  requireSound(next);
  const held = current.hold === undefined && hasOtherSize(current, next) ? holdIfTooSmall(next, at) : {};
  const isOtherKind = current.form.kind !== next.form.kind;
  const nominal = isOtherKind ? { nominalDiameterMm: undefined } : {};
  const record = settled(withoutUndefined({ ...withInspectionDue(next, at, policy), ...held, ...nominal }));
  return { record, changes: [replacement(bitKind, current, record)] };
}

/** What may change of where a bit stands: `undefined` removes a field. */
type StandingChange = Partial<Pick<BitStanding, "used">> & {
  readonly [Name in Exclude<keyof BitStanding, "state" | "used">]?: BitStanding[Name] | undefined;
};

/**
 * A bit after something that happened to it: a field given replaces the old one, `undefined` removes it, and
 * its state follows. `happening` names the event, such as `lent`.
 */
export function bitAfter(
  current: BitRecord,
  happening: string,
  changed: StandingChange & Partial<NewBit>,
  at: string,
): Decision<BitRecord> {
  return becoming(current, happening, withoutUndefined({ ...current, ...changed }), at);
}

/** The same after something by which its inspections are reckoned: it was used, or looked at. */
export function bitAfterUpkeep(
  current: BitRecord,
  happening: string,
  changed: StandingChange & Partial<NewBit>,
  at: string,
  policy: InspectionPolicy,
): Decision<BitRecord> {
  const next: BitRecord = withoutUndefined({ ...current, ...changed });
  return becoming(current, happening, withInspectionDue(next, at, policy), at);
}

function becoming(current: BitRecord, happening: string, next: BitRecord, at: string): Decision<BitRecord> {
  const { inspectionDueAt: _never, ...retired } = next;
  const record = nextVersion(settled(next.retirement === undefined ? next : retired), at);
  return { record, changes: [replacement(bitKind, current, record, happening)] };
}

/** Takes a bit off the rack; its last state stays in the events. One that is out must come back first. */
export function removeBit(current: BitRecord): Change {
  if (current.loanId !== undefined) {
    throw new Problem(
      "bit-on-loan",
      `Bit ${current.id} is out on loan ${current.loanId}. Take it back first.`,
    );
  }
  return removal(bitKind, current);
}

function withInspectionDue(
  { inspectionDueAt, ...bit }: BitRecord,
  at: string,
  policy: InspectionPolicy,
): BitRecord {
  const before = inspectionDueAt === undefined ? bit : { ...bit, inspectionDueAt };
  return { ...bit, ...inspectionDue(before, at, policy) };
}

function requireSound(bit: NewBit): void {
  const own = bitFaults(bit);
  const faults = own.length > 0 ? own : smallestUsableFaults(bit.form, bit.smallestUsableDiameterMm);
  if (faults.length > 0) throw new DomainError(faults);
}
