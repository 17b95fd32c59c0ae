import { and, asc, desc, gt, gte, lte, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordReads } from "../store/record-reads.ts";
import { checkpoints } from "../store/tables/history.ts";
import type { CheckpointRecord } from "./schema.ts";

/** What of a checkpoint can be checked. */
export type StatedCheckpoint = Pick<CheckpointRecord, "id" | "sequence" | "hash" | "createdAt" | "statement">;

type Place = Pick<CheckpointRecord, "sequence" | "createdAt">;

export type CheckpointReads = RecordReads<"checkpoint"> & {
  /** The one that reaches furthest. */
  readonly furthest: () => Promise<Place | undefined>;
  /** Those about the events from one sequence to another, both included, in order. */
  readonly about: (first: number, last: number) => Promise<StatedCheckpoint[]>;
  /** The first one about an event after this one. */
  readonly beyond: (sequence: number) => Promise<Place | undefined>;
};

export function checkpointReads(database: Database): CheckpointReads {
  const { id, sequence, hash, createdAt, statement } = checkpoints;
  const place = { sequence: checkpoints.sequence, createdAt: checkpoints.createdAt };
  const furthest = database
    .select(place)
    .from(checkpoints)
    .orderBy(desc(checkpoints.sequence), desc(checkpoints.id))
    .limit(1)
    .prepare();
  const about = database
    .select({ id, sequence, hash, createdAt, statement })
    .from(checkpoints)
    .where(
      and(
        gte(checkpoints.sequence, sql.placeholder("first")),
        lte(checkpoints.sequence, sql.placeholder("last")),
      ),
    )
    .orderBy(asc(checkpoints.sequence), asc(checkpoints.id))
    .prepare();
  const beyond = database
    .select(place)
    .from(checkpoints)
    .where(gt(checkpoints.sequence, sql.placeholder("sequence")))
    .orderBy(asc(checkpoints.sequence), asc(checkpoints.id))
    .limit(1)
    .prepare();
  return {
    ...recordReads(database, "checkpoint"),
    furthest: async () => furthest.get(),
    about: async (first, last) => about.all({ first, last }),
    beyond: async (sequence) => beyond.get({ sequence }),
  };
}
