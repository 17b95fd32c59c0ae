import { and, eq, gt, isNull, ne, or, sql } from "drizzle-orm";
import { personKind } from "../people/kind.ts";
import type { Expectation } from "../store/port.ts";
import { fieldsQuery, first, given, type Question, recordQuery } from "../store/query.ts";
import { recordQueries } from "../store/record-queries.ts";
import { keyKind } from "./kind.ts";
import type { KeyRecord } from "./schema.ts";

export const keys = { ...recordQueries(keyKind), findByDigest, otherManager, isEmpty };

/** Sorts after every time there is. */
const NEVER_REACHED = "~";

const column = keyKind.column;

const byDigest = recordQuery(keyKind, (rows) =>
  rows.where(
    or(eq(column("keySha256"), given("keySha256")), eq(column("previousSha256"), given("keySha256"))),
  ),
);
const inForce = and(
  isNull(column("revokedAt")),
  or(isNull(column("expiresAt")), gt(column("expiresAt"), given("after"))),
  // A narrowed key may not hold what the last manager needs.
  isNull(column("scopes")),
  ne(column("id"), given("keyId")),
);
const ofPrograms = fieldsQuery(keyKind, ["id", "version"], (rows) =>
  rows.where(and(eq(column("role"), sql`'manager'`), inForce)).limit(1),
);
const isActiveManager = and(
  eq(personKind.column("id"), column("personId")),
  eq(personKind.column("role"), sql`'manager'`),
  eq(personKind.column("state"), sql`'active'`),
  ne(personKind.column("id"), given("personId")),
);
const ofManagers = fieldsQuery(keyKind, ["id", "version", "personId"], (rows) =>
  rows.where(and(sql`EXISTS (SELECT 1 FROM ${personKind.table} WHERE ${isActiveManager})`, inForce)).limit(1),
);
const person = fieldsQuery(personKind, ["id", "version"], (rows) =>
  rows.where(eq(personKind.column("id"), given("id"))),
);
const any = fieldsQuery(keyKind, ["id"], (rows) => rows.limit(1));

/** The key whose present or previous secret has this digest. */
function findByDigest(keySha256: string): Question<KeyRecord | undefined> {
  return first(byDigest, { keySha256 });
}

/**
 * What must stay for the shop to have a manager besides this key and this person: another key in force, and its owner. With
 * `isForGood`, one that never expires.
 */
function* otherManager({
  keyId = "",
  personId = "",
  isForGood,
  at,
}: {
  readonly keyId?: string;
  readonly personId?: string;
  readonly isForGood: boolean;
  readonly at: string;
}): Question<Expectation[] | undefined> {
  const after = isForGood ? NEVER_REACHED : at;
  const program = yield* first(ofPrograms, { keyId, after });
  if (program !== undefined) return [{ kind: keyKind, ...program }];
  const owned = yield* first(ofManagers, { keyId, personId, after });
  if (owned?.personId === undefined) return undefined;
  const { id, version } = owned;
  const owner = yield* first(person, { id: owned.personId });
  return (
    owner && [
      { kind: keyKind, id, version },
      { kind: personKind, ...owner },
    ]
  );
}

/** Whether the shop has no key at all: it is new. */
function* isEmpty(): Question<boolean> {
  return (yield* first(any)) === undefined;
}
