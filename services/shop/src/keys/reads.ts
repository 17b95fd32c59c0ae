import { and, eq, gt, isNull, ne, or, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import type { Expectation } from "../store/port.ts";
import { type RecordReads, recordReads } from "../store/record-reads.ts";
import { keys, people } from "../store/tables/people.ts";
import type { KeyRecord } from "./schema.ts";

export type KeyReads = RecordReads<"key"> & {
  readonly findByDigest: (keySha256: string) => Promise<KeyRecord | undefined>;
  /**
   * What must stay for the shop to have a manager besides this key and this person: another key in force, and its owner. Where
   * `isForGood`, one that never expires.
   */
  readonly otherManager: (besides: {
    keyId?: string;
    personId?: string;
    isForGood: boolean;
    at: string;
  }) => Promise<Expectation[] | undefined>;
  readonly isEmpty: () => Promise<boolean>;
};

/** Sorts after every time there is. */
const NEVER_REACHED = "~";

export function keyReads(database: Database): KeyReads {
  const reads = recordReads(database, "key");
  const digest = sql.placeholder("keySha256");
  const byDigest = database
    .select({ id: keys.id })
    .from(keys)
    .where(or(eq(keys.keySha256, digest), eq(keys.previousSha256, digest)))
    .prepare();
  const inForce = and(
    isNull(keys.revokedAt),
    or(isNull(keys.expiresAt), gt(keys.expiresAt, sql.placeholder("after"))),
    // A narrowed key may not hold what the last manager needs.
    isNull(keys.scopes),
    ne(keys.id, sql.placeholder("keyId")),
  );
  const programs = database
    .select({ id: keys.id, version: keys.version })
    .from(keys)
    .where(and(eq(keys.role, "manager"), inForce))
    .limit(1)
    .prepare();
  const managers = database
    .select({ id: keys.id, version: keys.version, personId: people.id, personVersion: people.version })
    .from(keys)
    .innerJoin(people, eq(people.id, keys.personId))
    .where(
      and(
        eq(people.role, "manager"),
        eq(people.state, "active"),
        ne(people.id, sql.placeholder("personId")),
        inForce,
      ),
    )
    .limit(1)
    .prepare();
  const any = database.select({ id: keys.id }).from(keys).limit(1).prepare();
  return {
    ...reads,
    findByDigest: async (keySha256) => {
      const row = byDigest.get({ keySha256 });
      return row && reads.find(row.id);
    },
    otherManager: async ({ keyId = "", personId = "", isForGood, at }) => {
      const after = isForGood ? NEVER_REACHED : at;
      const program = programs.get({ keyId, after });
      if (program !== undefined) return [{ type: "key", ...program }];
      const owned = managers.get({ keyId, personId, after });
      if (owned === undefined) return undefined;
      return [
        { type: "key", id: owned.id, version: owned.version },
        { type: "person", id: owned.personId, version: owned.personVersion },
      ];
    },
    isEmpty: async () => any.get() === undefined,
  };
}
