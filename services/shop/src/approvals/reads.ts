import { and, asc, eq, gt, isNotNull, lte, type SQL, sql } from "drizzle-orm";
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
  /** Approvals in force that rest on a record. */
  inForceOn,
  /** Every approval in force. */
  inForce,
  /** All that an approval was made from; undefined for one that is not kept. */
  groundsOf,
  /** What an approval was asked for, without all that came of it. */
  requestOf,
  /** Why an approval lapsed; undefined when it did not. */
  lapseOf,
  /** Approvals in force of these courses for a bit in a router. */
  forPair,
  /** Approvals of a course in force that end by a moment, the first to end first. */
  endingBy,
  /** Approvals of a course in force that would hold longer than a moment. */
  outlasting,
  /** The place of an approval in the status list. */
  statusIndexOf,
  /** Whether any was ever issued. */
  wasAnyIssued,
};

/** A course has a handful of approvals for one bit in one router; more than this are not looked through. */
const MOST_FOR_A_PAIR = 200;

const { column } = approvalKind;
const id = column("id");

/** Written out, not bound: an index of issued approvals is used only when it can be read that only those are asked for. */
const IN_FORCE = sql`${column("state")} = 'issued'`;

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
const allInForce = issued(() => IN_FORCE);

const requests = fieldsQuery(groundsKind, ["request"], (rows) =>
  rows.where(eq(groundsKind.column("approvalId"), given("approvalId"))),
);

const pair: Query<ApprovalRecord> = recordQuery(approvalKind, (rows, dialect) =>
  rows
    .where(
      sql`${id} IN (
        SELECT id FROM ${dialect.byIndex("approvals", "approvals_in_force")}
        WHERE state = 'issued' AND ${dialect.isIn(sql`course_id`, given("courseIds"))}
          AND bit_id = ${given("bitId")} AND router_id = ${given("routerId")})`,
    )
    .limit(MOST_FOR_A_PAIR),
);

const ending = recordQuery(approvalKind, (rows) =>
  rows
    .where(and(eq(column("courseId"), given("courseId")), IN_FORCE, lte(column("validUntil"), given("at"))))
    .orderBy(asc(column("validUntil")))
    .limit(given("most")),
);

const lasting = fieldsQuery(approvalKind, ["id", "version", "validUntil", "sheetsUntil"], (rows) =>
  rows
    .where(and(eq(column("courseId"), given("courseId")), IN_FORCE, gt(column("validUntil"), given("at"))))
    .orderBy(asc(id)),
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

function forPair(courseIds: readonly string[], bitId: string, routerId: string): Question<ApprovalRecord[]> {
  return all(pair, { courseIds: { list: courseIds }, bitId, routerId });
}

function endingBy(courseId: string, at: string, most: number): Question<ApprovalRecord[]> {
  return all(ending, { courseId, at, most });
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
