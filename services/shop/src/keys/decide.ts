import { Problem } from "../problems/problem.ts";
import { creation, nextVersion, replacement } from "../store/changes.ts";
import type { Change, Expectation } from "../store/port.ts";
import { type KeyText, keyDigest } from "./key-text.ts";
import { type KeyRecord, type NewKey, shownKey } from "./schema.ts";

/** A new key's record; only the digest of its text is kept, and the event tells neither. */
export function createKey(
  { name, role }: NewKey,
  { keyId, text }: KeyText,
  at: string,
): { record: KeyRecord; change: Change } {
  const record: KeyRecord = {
    id: keyId,
    name,
    role,
    keySha256: keyDigest(text),
    createdAt: at,
    updatedAt: at,
    version: 1,
  };
  return { record, change: creation("key", record, shownKey(record)) };
}

/**
 * Revokes a key. The last manager's stays, or nobody could make another; the other manager's key that this
 * rests on must still be in force when it is written.
 */
export function revokeKey(
  record: KeyRecord,
  otherManager: KeyRecord | undefined,
  at: string,
): { record: KeyRecord; changes: Change[]; expects: Expectation[] } {
  if (record.revokedAt !== undefined) return { record, changes: [], expects: [] };
  const expects: Expectation[] = [];
  if (record.role === "manager") {
    if (otherManager === undefined) {
      throw new Problem("last-manager", "Create another manager's key first.");
    }
    expects.push({ type: "key", id: otherManager.id, version: otherManager.version });
  }
  const revoked = { ...nextVersion(record, at), revokedAt: at };
  return { record: revoked, changes: [replacement("key", record, revoked, "revoked")], expects };
}
