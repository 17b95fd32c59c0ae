import { and, asc, eq, gt, isNull, lt, type SQL } from "drizzle-orm";
import { all, given, type Query, type Question, recordQuery } from "../store/query.ts";
import { recordQueries } from "../store/record-queries.ts";
import { loanKind } from "./kind.ts";
import type { LoanRecord } from "./schema.ts";

export const loans = { ...recordQueries(loanKind), overdue };

type Of = { readonly bitId?: string | undefined; readonly personId?: string | undefined };

const queries = new Map<string, Query<LoanRecord>>();

/** Loans that are out and should have been back before a moment. */
function* overdue(at: string, of: Of, afterId: string, most: number): Question<LoanRecord[]> {
  const shape = `${of.bitId !== undefined} ${of.personId !== undefined}`;
  const query = queries.get(shape) ?? overdueQuery(of);
  queries.set(shape, query);
  return yield* all(query, { at, ...of, afterId, most });
}

function overdueQuery({ bitId, personId }: Of): Query<LoanRecord> {
  const id = loanKind.column("id");
  const conditions: SQL[] = [
    isNull(loanKind.column("returnedAt")),
    lt(loanKind.column("dueAt"), given("at")),
    gt(id, given("afterId")),
  ];
  if (bitId !== undefined) conditions.push(eq(loanKind.column("bitId"), given("bitId")));
  if (personId !== undefined) conditions.push(eq(loanKind.column("personId"), given("personId")));
  return recordQuery(loanKind, (rows) =>
    rows
      .where(and(...conditions))
      .orderBy(asc(id))
      .limit(given("most")),
  );
}
