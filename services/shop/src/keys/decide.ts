import { momentAfter } from "../http/moment.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { creation, type Decision, newRecord, nextVersion, replacement } from "../store/changes.ts";
import type { Expectation } from "../store/port.ts";
import { type KeyText, keyDigest } from "./key-text.ts";
import { keyKind } from "./kind.ts";
import { type KeyRecord, type KeyRotation, type NewKey, overlapOf, shownKey } from "./schema.ts";

const MINUTE_MS = 60_000;

/** A new key's record; only the digest of its text is kept, and the event says neither. */
export function createKey(given: NewKey, { keyId, text }: KeyText, at: string): Decision<KeyRecord> {
  requireOneOwner(given);
  const fields = {
    ...given,
    ...(given.expiresAt && { expiresAt: momentAfter(at, given.expiresAt, "/expiresAt") }),
    keySha256: keyDigest(text),
  };
  const record: KeyRecord = newRecord(keyId, fields, at);
  return { record, changes: [creation(keyKind, record, shownKey(record))] };
}

/** Gives a key its next secret. The old one works for a while longer, so that nothing has to stop in between. */
export function rotateKey(
  current: KeyRecord,
  { text }: KeyText,
  rotation: KeyRotation,
  at: string,
): Decision<KeyRecord> {
  if (current.revokedAt !== undefined) {
    throw new Problem("key-ended", "A revoked key stays revoked. Create another one.");
  }
  if (current.expiresAt !== undefined && current.expiresAt <= at) {
    throw new Problem("key-ended", "It has expired: a new secret would open nothing. Create another one.");
  }
  const until = new Date(new Date(at).getTime() + overlapOf(rotation) * MINUTE_MS).toISOString();
  const record: KeyRecord = {
    ...nextVersion(current, at),
    keySha256: keyDigest(text),
    previousSha256: current.keySha256,
    previousUntil: until,
  };
  const event = { type: "key.rotated", data: { after: { previousUntil: until, version: record.version } } };
  return {
    record,
    changes: [{ action: "replace", kind: keyKind, record, expectedVersion: current.version, event }],
  };
}

/**
 * Revokes a key. The last manager's stays, or nobody could make another; the other manager's key that this
 * rests on must still be in force when it is written.
 */
export function revokeKey(
  record: KeyRecord,
  isManagers: boolean,
  otherManager: readonly Expectation[] | undefined,
  at: string,
): Decision<KeyRecord> {
  if (record.revokedAt !== undefined) return { record, changes: [] };
  const expects = isManagers ? stillManaging(otherManager) : [];
  const revoked = { ...nextVersion(record, at), revokedAt: at };
  return { record: revoked, changes: [replacement(keyKind, record, revoked, "revoked")], expects };
}

/** What a decision that ends a manager's power rests on: another manager in force. */
export function stillManaging(otherManager: readonly Expectation[] | undefined): readonly Expectation[] {
  if (otherManager === undefined)
    throw new Problem("last-manager", "Create another manager's key that never expires first.");
  return otherManager;
}

function requireOneOwner({ role, personId }: NewKey): void {
  if ((role === undefined) !== (personId === undefined)) return;
  const accepted = "either a role, for a program, or a personId, whose role it will have";
  const message =
    role === undefined ? "The key belongs to nobody." : "A person's key has that person's role.";
  throw notValid([{ in: "body", pointer: role === undefined ? "/role" : "/personId", message, accepted }]);
}
