import { and, asc, eq, gt, isNull, lt, type SQL } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordReads, toRecord } from "../store/record-reads.ts";
import { loans } from "../store/tables/rack.ts";
import type { LoanRecord } from "./schema.ts";

export type LoanReads = RecordReads<"loan"> & {
  /** Loans that are out and should have been back before a moment. */
  readonly overdue: (
    at: string,
    of: { readonly bitId?: string | undefined; readonly personId?: string | undefined },
    afterId: string,
    most: number,
  ) => Promise<LoanRecord[]>;
};

export function loanReads(database: Database): LoanReads {
  return {
    ...recordReads(database, "loan"),
    overdue: async (at, { bitId, personId }, afterId, most) => {
      const conditions: SQL[] = [isNull(loans.returnedAt), lt(loans.dueAt, at), gt(loans.id, afterId)];
      if (bitId !== undefined) conditions.push(eq(loans.bitId, bitId));
      if (personId !== undefined) conditions.push(eq(loans.personId, personId));
      return database
        .select()
        .from(loans)
        .where(and(...conditions))
        .orderBy(asc(loans.id))
        .limit(most)
        .all()
        .map((row) => toRecord("loan", row));
    },
  };
}
