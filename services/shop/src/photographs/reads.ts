import { and, asc, eq, getTableColumns, gt } from "drizzle-orm";
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
};

export function photographReads(database: Database): PhotographReads {
  const { bytes: _, ...columns } = getTableColumns(photographs);
  return {
    ...recordReads(database, "photograph"),
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
