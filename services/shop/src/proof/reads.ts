import { sql } from "drizzle-orm";
import type { Kind } from "../store/kind.ts";
import { all, columnList, first, given, type Query, type Question } from "../store/query.ts";
import { recordDigest } from "../store/record-digest.ts";

/** A record as far as an event states it. */
type Stated = { readonly version: number; readonly digest: string };
/** A record, and whether an event is about it. */
type Found = { readonly id: string; readonly isStated: boolean };

/** Ids looked at in one question. */
const IDS_AT_ONCE = 500;

/** What is asked of the records of a kind to prove them. */
export function recordProofs(kind: Kind) {
  const id = kind.column("id");
  const versionAt = [...kind.columns.keys()].indexOf("version");
  const whole: Query<Stated> = {
    build: () => sql`SELECT ${columnList(kind)} FROM ${kind.table} WHERE ${id} = ${given("id")}`,
    read: (row) => ({ version: Number(row[versionAt]), digest: recordDigest(kind, row) }),
  };
  const found: Query<Found> = {
    build: () => sql`SELECT ${id}, EXISTS (SELECT 1 FROM events WHERE subject_id = ${id})
        OR ${kind.column("createdAt")} < ${given("since")}
      FROM ${kind.table} WHERE ${id} > ${given("afterId")} ORDER BY ${id} LIMIT ${given("most")}`,
    read: ([recordId, isStated]) => ({ id: String(recordId), isStated: isStated === 1 }),
  };
  return {
    kept: (recordId: string): Question<Stated | undefined> => first(whole, { id: recordId }),
    /** Whether there is an event about each of the next records, or it is older than `since`. */
    withTheirEvents: (afterId: string, since: string): Question<Found[]> =>
      all(found, { afterId, since, most: IDS_AT_ONCE }),
  };
}
