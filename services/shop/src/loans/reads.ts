import { and, asc, eq, gt, gte, isNull, lt, lte, or, type SQL } from "drizzle-orm";
import { all, fieldsQuery, first, given, type Query, type Question, recordQuery } from "../store/query.ts";
import { ownOnly, restrictedQueries, visibleRows } from "../store/record-queries.ts";
import { loanKind } from "./kind.ts";
import type { LoanRecord } from "./schema.ts";

const isOwn = ownOnly(loanKind);
const records = restrictedQueries(loanKind, isOwn);

/** Loans, all or those of one person. */
export const loans = {
  ...records,
  overdue: overdueOf(undefined),
  isLentTo,
  seenBy: (personId: string) => ({ ...records.seenBy(personId), overdue: overdueOf(personId) }),
};

type Of = { readonly bitId?: string | undefined; readonly personId?: string | undefined };

const { column } = loanKind;
const lent = fieldsQuery(loanKind, ["id"], (rows) =>
  rows
    .where(
      and(
        eq(column("bitId"), given("bitId")),
        eq(column("personId"), given("personId")),
        or(
          isNull(column("returnedAt")),
          and(lte(column("createdAt"), given("at")), gte(column("returnedAt"), given("at"))),
        ),
      ),
    )
    .limit(1),
);

/** Whether a bit is on loan to somebody now, or was at a moment. */
function* isLentTo(personId: string, bitId: string, at: string): Question<boolean> {
  return (yield* first(lent, { personId, bitId, at })) !== undefined;
}

const queries = new Map<string, Query<LoanRecord>>();

/** Loans that are out and should have been back before a moment, as far as somebody may see them. */
function overdueOf(viewer: string | undefined) {
  return function* (at: string, of: Of, afterId: string, most: number): Question<LoanRecord[]> {
    const shape = `${of.bitId !== undefined} ${of.personId !== undefined} ${viewer !== undefined}`;
    const query = queries.get(shape) ?? overdueQuery(of, viewer !== undefined);
    queries.set(shape, query);
    return yield* all(query, { at, ...of, afterId, most, viewer });
  };
}

function overdueQuery({ bitId, personId }: Of, isRestricted: boolean): Query<LoanRecord> {
  const id = loanKind.column("id");
  const conditions: SQL[] = [
    isNull(loanKind.column("returnedAt")),
    lt(loanKind.column("dueAt"), given("at")),
    gt(id, given("afterId")),
  ];
  if (bitId !== undefined) conditions.push(eq(loanKind.column("bitId"), given("bitId")));
  if (personId !== undefined) conditions.push(eq(loanKind.column("personId"), given("personId")));
  return recordQuery(loanKind, (rows, dialect) =>
    rows
      .where(and(...conditions, ...visibleRows(isRestricted ? isOwn : undefined, dialect)))
      .orderBy(asc(id))
      .limit(given("most")),
  );
}
