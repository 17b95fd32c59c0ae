import { and, eq } from "drizzle-orm";
import { all, given, type Question, recordQuery } from "../store/query.ts";
import { recordQueries } from "../store/record-queries.ts";
import { reservationKind } from "./kind.ts";
import type { ReservationRecord } from "./schema.ts";

const { column } = reservationKind;

const keptOfBit = recordQuery(reservationKind, (rows) =>
  rows.where(and(eq(column("bitId"), given("bitId")), eq(column("state"), given("state")))),
);

export const reservations = { ...recordQueries(reservationKind), keptOf };

/** The days for which a bit is kept, for whatever job. */
function keptOf(bitId: string): Question<ReservationRecord[]> {
  return all(keptOfBit, { bitId, state: "kept" });
}
