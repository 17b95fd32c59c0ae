import { and, asc, desc, gt, gte, lte } from "drizzle-orm";
import { all, fieldsQuery, first, given, type Question, rowQuery } from "../store/query.ts";
import { recordQueries } from "../store/record-queries.ts";
import { checkpointKind } from "./kind.ts";
import type { CheckpointRecord } from "./schema.ts";

/** What of a checkpoint can be checked. */
export type StatedCheckpoint = Pick<CheckpointRecord, "id" | "sequence" | "hash" | "createdAt" | "statement">;

/** What is kept and sent on of a checkpoint. */
type SignedStatement = Pick<CheckpointRecord, "sequence" | "statement">;

/** How far a checkpoint reaches. */
type Reach = Pick<CheckpointRecord, "sequence" | "createdAt">;

export const checkpoints = {
  ...recordQueries(checkpointKind),
  /** The one that reaches furthest. */
  furthest,
  /** The signed statement of the one that reaches furthest, if there is one. */
  newestStatement,
  /** The signed statements of those that reach further than this, in order. */
  statementsAfter,
  /** Those about the events from one sequence to another, both included, in order. */
  about,
  /** The first one about an event after this one. */
  beyond,
  /** The keys that have signed one, each once. */
  signingKeyIds,
};

const id = checkpointKind.column("id");
const sequence = checkpointKind.column("sequence");

const furthestOne = fieldsQuery(checkpointKind, ["sequence", "createdAt"], (rows) =>
  rows.orderBy(desc(sequence), desc(id)).limit(1),
);
const newestOne = fieldsQuery(checkpointKind, ["sequence", "statement"], (rows) =>
  rows.orderBy(desc(sequence), desc(id)).limit(1),
);
const thoseAfter = fieldsQuery(checkpointKind, ["sequence", "statement"], (rows) =>
  rows.where(gt(sequence, given("sequence"))).orderBy(asc(sequence), asc(id)),
);
const stated = fieldsQuery(checkpointKind, ["id", "sequence", "hash", "createdAt", "statement"], (rows) =>
  rows
    .where(and(gte(sequence, given("first")), lte(sequence, given("last"))))
    .orderBy(asc(sequence), asc(id)),
);
const firstBeyond = fieldsQuery(checkpointKind, ["sequence", "createdAt"], (rows) =>
  rows
    .where(gt(sequence, given("sequence")))
    .orderBy(asc(sequence), asc(id))
    .limit(1),
);

const signedBy = rowQuery({ id: checkpointKind.column("signingKeyId") }, (selection) =>
  selection.from(checkpointKind.table).groupBy(checkpointKind.column("signingKeyId")),
);

function* signingKeyIds(): Question<string[]> {
  return (yield* all(signedBy)).map((row) => String(row.id));
}

function furthest(): Question<Reach | undefined> {
  return first(furthestOne);
}

function newestStatement(): Question<SignedStatement[]> {
  return all(newestOne);
}

function statementsAfter(after: number): Question<SignedStatement[]> {
  return all(thoseAfter, { sequence: after });
}

function about(from: number, last: number): Question<StatedCheckpoint[]> {
  return all(stated, { first: from, last });
}

function beyond(after: number): Question<Reach | undefined> {
  return first(firstBeyond, { sequence: after });
}
