import { woodById } from "@rimwise/domain";
import { and, asc, eq, gt, inArray, lte, ne, type SQL, sql } from "drizzle-orm";
import { type LearnedQueries, learnedQueries } from "../plans/learned.ts";
import type { PlanRequest } from "../plans/schema.ts";
import { usableRouterQuery } from "../routers/reads.ts";
import { SHOP_POLICY_ID } from "../shop-policy/schema.ts";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordQueries, recordReads, toRecord } from "../store/record-reads.ts";
import { approvals } from "../store/tables/courses.ts";
import type { Ground } from "./outcome.ts";
import type { ApprovalRecord, GroundsRecord } from "./schema.ts";

/** What is asked inside a transaction, where nothing may wait. */
export type GroundQueries = {
  /** Settings in force that rest on a record. */
  readonly inForceOn: (field: "bitId" | "routerId" | "courseId", id: string) => ApprovalRecord[];
  /** Every setting in force. */
  readonly inForce: () => ApprovalRecord[];
  readonly groundsOf: (approvalId: string) => GroundsRecord | undefined;
  /** What a setting rests on, as it is now. */
  readonly ground: (request: PlanRequest, woodIds: readonly string[], courseId: string, at: string) => Ground;
};

export type ApprovalReads = RecordReads<"approval"> & {
  readonly groundsOf: (approvalId: string) => Promise<GroundsRecord | undefined>;
  readonly ground: (...asked: Parameters<GroundQueries["ground"]>) => Promise<Ground>;
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

export function groundQueries(database: Database): GroundQueries {
  const grounds = recordQueries(database, "grounds");
  const bits = recordQueries(database, "bit");
  const routers = recordQueries(database, "router");
  const courses = recordQueries(database, "course");
  const policies = recordQueries(database, "shop-policy");
  const learned: LearnedQueries = learnedQueries(database);
  const usable = usableRouterQuery(database);
  const issued = (condition?: SQL) =>
    database
      .select()
      .from(approvals)
      .where(and(eq(approvals.state, "issued"), condition))
      .orderBy(asc(approvals.id))
      .all()
      .map((row) => toRecord("approval", row));
  const columns = { bitId: approvals.bitId, routerId: approvals.routerId, courseId: approvals.courseId };
  return {
    inForceOn: (field, id) => issued(eq(columns[field], id)),
    inForce: () => issued(),
    groundsOf: (approvalId) => grounds.page("", 1, { approvalId })[0],
    ground: (request, woodIds, courseId, at) => {
      const bit = "id" in request.bit ? bits.find(request.bit.id) : undefined;
      const router = "id" in request.router ? routers.find(request.router.id) : undefined;
      return {
        request,
        bit: bit && { record: bit, learned: learned.ofBit(bit.id) },
        router: router && { record: router, usable: usable(router, at) },
        layers: [policies.find(SHOP_POLICY_ID)?.layer ?? {}, courses.find(courseId)?.policy ?? {}],
        woods: woodIds.flatMap((id) => woodById(id) ?? []),
      };
    },
  };
}

export function approvalReads(database: Database): ApprovalReads {
  const queries = groundQueries(database);
  const pair = database
    .select()
    .from(approvals)
    .where(
      and(
        eq(approvals.state, "issued"),
        sql`${approvals.courseId} IN (SELECT value FROM json_each(${sql.placeholder("courseIds")}))`,
        eq(approvals.bitId, sql.placeholder("bitId")),
        eq(approvals.routerId, sql.placeholder("routerId")),
      ),
    )
    .limit(MOST_FOR_A_PAIR)
    .prepare();
  return {
    ...recordReads(database, "approval"),
    groundsOf: async (approvalId) => queries.groundsOf(approvalId),
    ground: async (...asked) => queries.ground(...asked),
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
        .where(
          and(eq(approvals.courseId, courseId), eq(approvals.state, "issued"), lte(approvals.validUntil, at)),
        )
        .orderBy(asc(approvals.validUntil))
        .limit(most)
        .all()
        .map((row) => toRecord("approval", row)),
    endedEarly: async (at, most) =>
      database
        .select({ id: approvals.id })
        .from(approvals)
        .where(
          and(sql`${approvals.state} IN ('lapsed', 'withdrawn', 'replaced')`, gt(approvals.validUntil, at)),
        )
        .limit(most)
        .all()
        .map(({ id }) => id),
  };
}

/** A course has a handful of settings for one bit in one router; more than this are not looked through. */
const MOST_FOR_A_PAIR = 200;
