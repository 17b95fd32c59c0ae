import { and, asc, count, eq, getTableColumns, gt, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordReads, toRecord } from "../store/record-reads.ts";
import { photographs } from "../store/tables/rack.ts";
import type { PhotographRecord } from "./schema.ts";

export type PhotographReads = RecordReads<"photograph"> & {
  /** Photographs without their bytes, which a list never reads. */
  readonly shown: (
    afterId: string,
    most: number,
    bitId: string | undefined,
  ) => Promise<Omit<PhotographRecord, "bytes">[]>;
  /** How many a bit has. */
  readonly countOf: (bitId: string) => Promise<number>;
};

/** How many photographs a bit has, for what is decided inside a transaction. */
export function photographCount(database: Database): (bitId: string) => number {
  const ofBit = database
    .select({ kept: count() })
    .from(photographs)
    .where(eq(photographs.bitId, sql.placeholder("bitId")))
    .prepare();
  return (bitId) => ofBit.get({ bitId })?.kept ?? 0;
}

export function photographReads(database: Database): PhotographReads {
  const countOf = photographCount(database);
  const { bytes: _, ...columns } = getTableColumns(photographs);
  return {
    ...recordReads(database, "photograph"),
    countOf: async (bitId) => countOf(bitId),
    shown: async (afterId, most, bitId) =>
      database
        .select(columns)
        .from(photographs)
        .where(
          and(gt(photographs.id, afterId), bitId === undefined ? undefined : eq(photographs.bitId, bitId)),
        )
        .orderBy(asc(photographs.id))
        .limit(most)
        .all()
        .map((row) => toRecord("photograph", row)),
  };
}
