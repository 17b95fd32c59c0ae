import { merged } from "../http/fields.ts";
import { happenedAt } from "../http/moment.ts";
import { creation, type Decision, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { profileKind } from "./kind.ts";
import {
  MOST_MAKINGS,
  type NewProfile,
  type ProfileChange,
  type ProfileMaking,
  type ProfileRecord,
} from "./schema.ts";
import { wantedOf } from "./shape.ts";

/** A profile to keep. Throws a problem for a shape that no wall has. */
export function keepProfile(id: string, given: NewProfile, at: string): Decision<ProfileRecord> {
  wantedOf(given.shape, "/shape");
  const record: ProfileRecord = newRecord(id, { ...given, made: [] }, at);
  return { record, changes: [creation(profileKind, record)] };
}

/** A profile's next state. How it was made stays, whatever becomes of its shape. */
export function changeProfile(
  current: ProfileRecord,
  change: ProfileChange,
  at: string,
): Decision<ProfileRecord> {
  const record = nextVersion(merged<ProfileRecord>(current, change), at);
  wantedOf(record.shape, "/shape");
  return { record, changes: [replacement(profileKind, current, record)] };
}

/** A profile with where it was made and how. */
export function profileMade(
  current: ProfileRecord,
  making: ProfileMaking,
  at: string,
): Decision<ProfileRecord> {
  const made = { ...making, at: happenedAt(making.at, at, "/at") };
  const record: ProfileRecord = {
    ...nextVersion(current, at),
    made: [...current.made, made].slice(-MOST_MAKINGS),
  };
  return { record, changes: [replacement(profileKind, current, record, "made")] };
}
