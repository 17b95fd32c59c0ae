import { and, asc, desc, eq, gt, isNotNull, isNull, lte, or, type SQL, sql } from "drizzle-orm";
import { inOwnCourses } from "../enrolments/reads.ts";
import {
  all,
  fieldsQuery,
  first,
  given,
  type Query,
  type Question,
  recordQuery,
  rowQuery,
} from "../store/query.ts";
import { recordQueries, restrictedQueries } from "../store/record-queries.ts";
import { approvalKind, groundsKind, lapseKind } from "./kind.ts";
import type { ApprovalRecord, GroundsRecord, InForce, LapseRecord, Lasting } from "./record-schema.ts";

/** Whoever is not in charge sees what is issued in their courses: no drafts, and nothing that names other students. */
const isInOwnCourses = inOwnCourses(approvalKind.column("courseId"));
const records = restrictedQueries(approvalKind, (personId, dialect) => {
  const { column } = approvalKind;
  const isForThem = sql`(${column("personIds")} IS NULL OR ${dialect.holds(column("personIds"), personId)})`;
  return sql`${isInOwnCourses(personId, dialect)} AND ${column("state")} <> 'draft' AND ${isForThem}`;
});
const grounds = recordQueries(groundsKind);
const lapses = recordQueries(lapseKind);

export const approvals = {
  ...records,
  /** Issued approvals that rest on a record. Expired ones too: a clock that was ahead must not leave one that no longer holds. */
  inForceOn,
  /** Every issued approval. */
  inForce,
  /** All that an approval was made from; undefined for one that is not kept. */
  groundsOf,
  /** What an approval was asked for, without all that came of it. */
  requestOf,
  /** Why an approval lapsed; undefined when it did not. */
  lapseOf,
  /** Approvals of these courses that hold at a moment for a bit in a router: all of them. */
  forPair,
  /** Approvals of a course that hold at a moment for one person, the latest first. */
  holdingFor,
  /** Approvals of a course in force that end between two moments, the first to end first. */
  endingBetween,
  /** Approvals of a course in force that would hold longer than a moment. */
  outlasting,
  /** The place of an approval in the status list. */
  statusIndexOf,
  /** Whether any was ever issued. */
  wasAnyIssued,
};

const { column } = approvalKind;
const id = column("id");

/** Written out, not bound: an index of issued approvals is used only when it can be read that only those are asked for. */
const IS_ISSUED = sql`${column("state")} = 'issued'`;

/** Whether an approval has not expired: what has is still kept as issued. */
const isLasting = gt(column("validUntil"), given("at"));
const holds = and(IS_ISSUED, isLasting, lte(column("validFrom"), given("at")));

const issued = (condition: (indexed: (index: string, narrow: SQL) => SQL) => SQL) =>
  fieldsQuery(approvalKind, ["id", "version", "courseId", "inputDigest", "resultDigest"], (rows, dialect) => {
    // Which index to use is said: without statistics one is taken that also looks at what is not in force.
    const indexed = (index: string, narrow: SQL) =>
      sql`${id} IN (SELECT id FROM ${dialect.byIndex("approvals", index)} WHERE state = 'issued' AND ${narrow})`;
    return rows.where(condition(indexed)).orderBy(asc(id));
  });

const IN_FORCE_ON = {
  bitId: issued((indexed) => indexed("approvals_in_force_by_bit", sql`bit_id = ${given("id")}`)),
  routerId: issued((indexed) => indexed("approvals_in_force_by_router", sql`router_id = ${given("id")}`)),
  courseId: issued((indexed) => indexed("approvals_in_force", sql`course_id = ${given("id")}`)),
};
const allInForce = issued(() => IS_ISSUED);

const requests = fieldsQuery(groundsKind, ["request"], (rows) =>
  rows.where(eq(groundsKind.column("approvalId"), given("approvalId"))),
);

const pair: Query<ApprovalRecord> = recordQuery(approvalKind, (rows, dialect) =>
  rows.where(
    sql`${id} IN (
      SELECT id FROM ${dialect.byIndex("approvals", "approvals_in_force")}
      WHERE state = 'issued' AND ${dialect.isIn(sql`course_id`, given("courseIds"))}
        AND bit_id = ${given("bitId")} AND router_id = ${given("routerId")}
        AND valid_until > ${given("at")} AND valid_from <= ${given("at")})`,
  ),
);

const holding = recordQuery(approvalKind, (rows, dialect) => {
  const persons = column("personIds");
  const isForThem = or(isNull(persons), dialect.holds(persons, given("personId")));
  return rows
    .where(and(eq(column("courseId"), given("courseId")), holds, isForThem))
    .orderBy(desc(id))
    .limit(given("most"));
});

const ending = recordQuery(approvalKind, (rows) =>
  rows
    .where(
      and(
        eq(column("courseId"), given("courseId")),
        IS_ISSUED,
        isLasting,
        lte(column("validUntil"), given("until")),
      ),
    )
    .orderBy(asc(column("validUntil")))
    .limit(given("most")),
);

const lasting = fieldsQuery(approvalKind, ["id", "version", "validUntil", "sheetsUntil"], (rows) =>
  rows.where(and(eq(column("courseId"), given("courseId")), IS_ISSUED, isLasting)).orderBy(asc(id)),
);

const statusIndex = rowQuery({ statusIndex: column("statusIndex") }, (selection) =>
  selection.from(approvalKind.table).where(eq(id, given("id"))),
);

function inForceOn(field: keyof typeof IN_FORCE_ON, ofId: string): Question<InForce[]> {
  return all(IN_FORCE_ON[field], { id: ofId });
}

function inForce(): Question<InForce[]> {
  return all(allInForce);
}

function* groundsOf(approvalId: string): Question<GroundsRecord | undefined> {
  return (yield* grounds.page("", 1, { approvalId }))[0];
}

function* requestOf(approvalId: string): Question<GroundsRecord["request"] | undefined> {
  return (yield* first(requests, { approvalId }))?.request;
}

function* lapseOf({ lapseId }: ApprovalRecord): Question<LapseRecord | undefined> {
  return lapseId === undefined ? undefined : yield* lapses.find(lapseId);
}

function forPair(
  courseIds: readonly string[],
  bitId: string,
  routerId: string,
  at: string,
): Question<ApprovalRecord[]> {
  return all(pair, { courseIds: { list: courseIds }, bitId, routerId, at });
}

function holdingFor(
  personId: string,
  courseId: string,
  at: string,
  most: number,
): Question<ApprovalRecord[]> {
  return all(holding, { personId, courseId, at, most });
}

function endingBetween(
  courseId: string,
  at: string,
  until: string,
  most: number,
): Question<ApprovalRecord[]> {
  return all(ending, { courseId, at, until, most });
}

function outlasting(courseId: string, at: string): Question<Lasting[]> {
  return all(lasting, { courseId, at });
}

const everIssued = fieldsQuery(approvalKind, ["id"], (rows) =>
  rows.where(isNotNull(column("issuedAt"))).limit(1),
);

function* wasAnyIssued(): Question<boolean> {
  return (yield* first(everIssued)) !== undefined;
}

function* statusIndexOf(approvalId: string): Question<number | undefined> {
  const row = yield* first(statusIndex, { id: approvalId });
  return row === undefined ? undefined : Number(row.statusIndex);
}
