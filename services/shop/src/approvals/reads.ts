import { type PolicyLayer, woodById } from "@rimwise/domain";
import { and, asc, eq, gt, inArray, lte, ne, type SQL, sql } from "drizzle-orm";
import { type LearnedQueries, learnedQueries } from "../plans/learned.ts";
import type { PlanRequest } from "../plans/schema.ts";
import { usableRouterQuery } from "../routers/reads.ts";
import { shopLayerQuery } from "../shop-policy/reads.ts";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordQueries, recordReads, toRecord } from "../store/record-reads.ts";
import { approvalGrounds, approvals } from "../store/tables/courses.ts";
import type { ApprovalRecord, GroundsRecord, InForce, LapseRecord } from "./approval.ts";
import type { Ground } from "./outcome.ts";

/** What is asked inside a transaction, where nothing may wait. */
export type GroundQueries = {
  /** Settings in force that rest on a record. */
  readonly inForceOn: (field: "bitId" | "routerId" | "courseId", id: string) => InForce[];
  /** Every setting in force. */
  readonly inForce: () => InForce[];
  /** All of a setting that is in force. */
  readonly wholeOf: (approvalId: string) => ApprovalRecord;
  readonly groundsOf: (approvalId: string) => GroundsRecord | undefined;
  /** What a setting was asked for, without all that came out. */
  readonly requestOf: (approvalId: string) => PlanRequest | undefined;
  /** What settings rest on, as it is at a moment. What several share is read once, so ask anew after a change. */
  readonly groundsAt: (at: string) => GroundAt;
};

type GroundAt = (request: PlanRequest, woodIds: readonly string[], courseId: string) => Ground;

export type ApprovalReads = RecordReads<"approval"> & {
  readonly groundsOf: (approvalId: string) => Promise<GroundsRecord | undefined>;
  readonly ground: (at: string, ...asked: Parameters<GroundAt>) => Promise<Ground>;
  /** Why a setting lapsed; undefined where it did not. */
  readonly lapseOf: (approval: ApprovalRecord) => Promise<LapseRecord | undefined>;
  /** Settings in force of these courses for a bit in a router. */
  readonly forPair: (
    courseIds: readonly string[],
    bitId: string,
    routerId: string,
  ) => Promise<ApprovalRecord[]>;
  /** Settings of several courses that are no drafts, oldest first. */
  readonly ofCourses: (
    courseIds: readonly string[],
    afterId: string,
    most: number,
  ) => Promise<ApprovalRecord[]>;
  /** Settings of a course in force that end by a moment, the first to end first. */
  readonly endingBy: (courseId: string, at: string, most: number) => Promise<ApprovalRecord[]>;
  /** Ids of settings that ended before their time, while their sheets could still be believed. */
  readonly endedEarly: (at: string, most: number) => Promise<string[]>;
};

/** Written out, not bound: SQLite uses an index of issued settings only where it can read that only those are asked for. */
const IN_FORCE = sql`${approvals.state} = 'issued'`;

export function groundQueries(database: Database): GroundQueries {
  const grounds = recordQueries(database, "grounds");
  const bits = recordQueries(database, "bit");
  const routers = recordQueries(database, "router");
  const courses = recordQueries(database, "course");
  const shopLayer = shopLayerQuery(database);
  const learned: LearnedQueries = learnedQueries(database);
  const requests = database
    .select({ request: approvalGrounds.request })
    .from(approvalGrounds)
    .where(eq(approvalGrounds.approvalId, sql.placeholder("approvalId")))
    .prepare();
  const usable = usableRouterQuery(database);
  const records = recordQueries(database, "approval");
  const { id: approvalId, version, courseId, inputDigest, resultDigest } = approvals;
  const issued = (condition: SQL) =>
    database
      .select({ id: approvalId, version, courseId, inputDigest, resultDigest })
      .from(approvals)
      .where(condition)
      .orderBy(asc(approvals.id))
      .prepare();
  const all = issued(IN_FORCE);
  const id = sql.placeholder("id");
  // Told which index to use: without statistics SQLite takes one that also looks at what is not in force.
  const on = {
    bitId: issued(
      sql`${approvals.id} IN (SELECT id FROM approvals INDEXED BY approvals_in_force_by_bit WHERE state = 'issued' AND bit_id = ${id})`,
    ),
    routerId: issued(
      sql`${approvals.id} IN (SELECT id FROM approvals INDEXED BY approvals_in_force_by_router WHERE state = 'issued' AND router_id = ${id})`,
    ),
    courseId: issued(
      sql`${approvals.id} IN (SELECT id FROM approvals INDEXED BY approvals_in_force WHERE state = 'issued' AND course_id = ${id})`,
    ),
  };
  return {
    inForceOn: (field, id) => on[field].all({ id }),
    inForce: () => all.all(),
    wholeOf: (id) => {
      const approval = records.find(id);
      if (approval === undefined) throw new Error(`${id} is in force and not kept`);
      return approval;
    },
    groundsOf: (approvalId) => grounds.page("", 1, { approvalId })[0],
    requestOf: (approvalId) => toRecord("grounds", requests.get({ approvalId }) ?? {}).request,
    groundsAt: (at) => {
      // Most changes move the ground of nothing: then it is never read.
      let shop: PolicyLayer | undefined;
      const bitOf = once((id) => {
        const record = bits.find(id);
        return record && { record, learned: learned.ofBit(id, at) };
      });
      const routerOf = once((id) => {
        const record = routers.find(id);
        return record && { record, usable: usable(record, at) };
      });
      const policyOf = once((id) => courses.find(id)?.policy ?? {});
      return (request, woodIds, courseId) => {
        shop ??= shopLayer();
        return {
          request,
          bit: "id" in request.bit ? bitOf(request.bit.id) : undefined,
          router: "id" in request.router ? routerOf(request.router.id) : undefined,
          layers: [shop, policyOf(courseId)],
          woods: woodIds.flatMap((id) => woodById(id) ?? []),
        };
      };
    },
  };
}

/** A lookup that is made once for each id. */
function once<Value>(look: (id: string) => Value): (id: string) => Value {
  const known = new Map<string, { readonly value: Value }>();
  return (id) => {
    const found = known.get(id) ?? { value: look(id) };
    known.set(id, found);
    return found.value;
  };
}

export function approvalReads(database: Database): ApprovalReads {
  const queries = groundQueries(database);
  const pair = database
    .select()
    .from(approvals)
    .where(
      sql`${approvals.id} IN (
        SELECT id FROM approvals INDEXED BY approvals_in_force
        WHERE state = 'issued' AND course_id IN (SELECT value FROM json_each(${sql.placeholder("courseIds")}))
          AND bit_id = ${sql.placeholder("bitId")} AND router_id = ${sql.placeholder("routerId")})`,
    )
    .limit(MOST_FOR_A_PAIR)
    .prepare();
  const lapses = recordReads(database, "lapse");
  return {
    ...recordReads(database, "approval"),
    lapseOf: async ({ lapseId }) => (lapseId === undefined ? undefined : lapses.find(lapseId)),
    groundsOf: async (approvalId) => queries.groundsOf(approvalId),
    ground: async (at, ...asked) => queries.groundsAt(at)(...asked),
    forPair: async (courseIds, bitId, routerId) =>
      pair
        .all({ courseIds: JSON.stringify(courseIds), bitId, routerId })
        .map((row) => toRecord("approval", row)),
    ofCourses: async (courseIds, afterId, most) =>
      database
        .select()
        .from(approvals)
        .where(
          and(
            inArray(approvals.courseId, [...courseIds]),
            ne(approvals.state, "draft"),
            gt(approvals.id, afterId),
          ),
        )
        .orderBy(asc(approvals.id))
        .limit(most)
        .all()
        .map((row) => toRecord("approval", row)),
    endingBy: async (courseId, at, most) =>
      database
        .select()
        .from(approvals)
        .where(and(eq(approvals.courseId, courseId), IN_FORCE, lte(approvals.validUntil, at)))
        .orderBy(asc(approvals.validUntil))
        .limit(most)
        .all()
        .map((row) => toRecord("approval", row)),
    endedEarly: async (at, most) =>
      database
        .all<{ id: string }>(
          sql`SELECT id FROM approvals INDEXED BY approvals_ended
              WHERE state IN ('lapsed', 'withdrawn', 'replaced') AND valid_until > ${at} LIMIT ${most}`,
        )
        .map(({ id }) => id),
  };
}

/** A course has a handful of settings for one bit in one router; more than this are not looked through. */
const MOST_FOR_A_PAIR = 200;
