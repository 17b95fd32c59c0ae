import type { DialSpeed } from "@rimwise/domain";
import { and, desc, eq, gt, gte, lte, or, type SQL, sql } from "drizzle-orm";
import { shopPolicy } from "../shop-policy/reads.ts";
import {
  all,
  columnList,
  first,
  given,
  type Query,
  type Question,
  recordQuery,
  rowQuery,
} from "../store/query.ts";
import { recordQueries } from "../store/record-queries.ts";
import type { Completion } from "../store/store.ts";
import { type Match, partsOf } from "../store/values.ts";
import { bitKind } from "./kind.ts";
import type { BitRecord } from "./schema.ts";
import { inspectionDue } from "./standing.ts";

/** What a list of bits is narrowed to. */
export type BitFilter = {
  /** Words and facets to find; undefined for every bit. */
  readonly match?: Match;
  /** Only bits that may run at one of these speeds. */
  readonly runsAt?: readonly Pick<DialSpeed, "rpm" | "rpmHighest">[];
  /** Only bits that are called so, here or in another program. */
  readonly id?: { readonly list: readonly string[] };
  readonly externalId?: string;
  /** Only bits of the set of this name. */
  readonly setName?: string;
  /** Only the bit of this number of the shop's own. */
  readonly shopNumber?: number;
};

export const bits = { ...recordQueries(bitKind), search, searchBestFirst, wastingGroove, shopNumberOf };

const number = bitKind.column("number");
const searches = new Map<string, Query<NumberedBit>>();

/** A bit with the number that pages go on from. */
export type NumberedBit = { readonly number: number; readonly record: BitRecord };

/** Bits in order of their number, after this one. */
function* search(afterNumber: number, most: number, filter: BitFilter): Question<NumberedBit[]> {
  const { match, runsAt, id, externalId, setName, shopNumber } = filter;
  const asked = [match, id, externalId, setName, shopNumber].map((each) => each !== undefined);
  const shape = `${asked.join(" ")} ${match && partsOf(match)} ${runsAt?.length}`;
  const query = searches.get(shape) ?? searchQuery(filter);
  searches.set(shape, query);
  const speeds = runsAt?.flatMap(({ rpm, rpmHighest }, index) => [
    [`rpm${index}`, rpm],
    [`rpmHighest${index}`, rpmHighest],
  ]);
  return yield* all(query, {
    afterNumber,
    most,
    ...(match && { match: { match } }),
    ...(id && { id }),
    externalId,
    setName,
    shopNumber,
    ...Object.fromEntries(speeds ?? []),
  });
}

/** A bit with the place that pages of a search go on from: which filter found it, and its number. */
export type FoundBit = NumberedBit & { readonly filter: number };

/** What the first filter finds, then what the next does, after a bit that was found. No two may find the same. */
function* searchBestFirst(
  after: Pick<FoundBit, "filter" | "number">,
  most: number,
  filters: readonly BitFilter[],
): Question<FoundBit[]> {
  const found: FoundBit[] = [];
  for (const [filter, each] of filters.entries()) {
    if (filter < after.filter || found.length >= most) continue;
    const afterNumber = filter === after.filter ? after.number : 0;
    const more = yield* search(afterNumber, most - found.length, each);
    found.push(...more.map((bit) => ({ ...bit, filter })));
  }
  return found;
}

const shopNumber = rowQuery({ shopNumber: bitKind.column("shopNumber") }, (selection) =>
  selection.from(bitKind.table).where(eq(bitKind.column("id"), given("id"))),
);

/** The number that the shop knows a bit by; undefined if there is no such bit. */
function* shopNumberOf(bitId: string): Question<number | undefined> {
  const row = yield* first(shopNumber, { id: bitId });
  return row === undefined ? undefined : Number(row.shopNumber);
}

/** Bits at hand that take the wood out of a groove no wider than this, the widest first. */
function wastingGroove(widthMm: number, most: number): Question<BitRecord[]> {
  return all(bitsWastingGroove, { widthMm, most });
}

export const bitsWastingGroove = recordQuery(bitKind, (rows) =>
  rows
    .where(lte(bitKind.column("wastesGrooveMm"), given("widthMm")))
    .orderBy(desc(bitKind.column("wastesGrooveMm")), number)
    .limit(given("most")),
);

/** A search by words or without, for bits that may run at any of so many speeds or are called so. */
function searchQuery({ match, runsAt, id, externalId, setName, shopNumber }: BitFilter): Query<NumberedBit> {
  const record = recordQuery(bitKind, (rows) => rows);
  const width = bitKind.columns.size;
  return {
    build: (dialect) => {
      const conditions = [
        ...(runsAt === undefined ? [] : [runsAtAny(runsAt.length)]),
        ...(id === undefined ? [] : [dialect.isIn(bitKind.column("id"), given("id"))]),
        ...(externalId === undefined ? [] : [eq(bitKind.column("externalId"), given("externalId"))]),
        ...(setName === undefined ? [] : [eq(bitKind.column("setName"), given("setName"))]),
        ...(shopNumber === undefined ? [] : [eq(bitKind.column("shopNumber"), given("shopNumber"))]),
      ];
      const [afterNumber, most] = [given("afterNumber"), given("most")];
      const columns = sql`${columnList(bitKind)}, ${number}`;
      if (match !== undefined) {
        const parts = partsOf(match);
        return dialect.found(bitKind, {
          columns,
          match: given("match"),
          parts,
          conditions,
          afterNumber,
          most,
        });
      }
      return sql`SELECT ${columns} FROM ${bitKind.table}
        WHERE ${and(gt(number, afterNumber), ...conditions)} ORDER BY ${number} LIMIT ${most}`;
    },
    read: (row) => ({ number: Number(row[width]), record: record.read(row) }),
  };
}

/** A hard limit is held by the fastest a dial setting may actually give, a guide by its nominal speed. */
function runsAtAny(count: number): SQL {
  const each = Array.from({ length: count }, (_, index) =>
    and(
      gte(bitKind.column("ceilingRpm"), given(`rpmHighest${index}`)),
      gte(bitKind.column("guideRpm"), given(`rpm${index}`)),
    ),
  );
  return or(...each) ?? sql`FALSE`;
}

/** Bits from before there were words to find them by: SQL does not know those, nor when a bit's inspection is due. */
export const bitsWithoutWords: Completion<typeof bitKind> = {
  kind: bitKind,
  // Written out, not bound, so that the index of bits without words is seen to be enough.
  incomplete: recordQuery(bitKind, (rows) => rows.where(eq(bitKind.column("words"), sql`''`))),
  complete: function* (record) {
    return inspectionDue(record, record.updatedAt, yield* shopPolicy());
  },
};
