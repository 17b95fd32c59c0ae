import type { Router } from "@rimwise/domain";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordQueries, recordReads } from "../store/record-reads.ts";
import type { RouterRecord } from "./schema.ts";
import { usableRouter } from "./usable.ts";

export type RouterReads = RecordReads<"router"> & {
  /** A router as it can be used at a moment. */
  readonly usable: (record: RouterRecord, at: string) => Promise<Router>;
};

/** What is read of a router's readings and collets at most; a router has a few dozen. */
const MOST_PARTS = 1000;

export function routerReads(database: Database): RouterReads {
  const usable = usableRouterQuery(database);
  return { ...recordReads(database, "router"), usable: async (record, at) => usable(record, at) };
}

/** A router as it can be used at a moment, inside a transaction. */
export function usableRouterQuery(database: Database): (record: RouterRecord, at: string) => Router {
  const readings = recordQueries(database, "dial-reading");
  const collets = recordQueries(database, "collet");
  return (record, at) =>
    usableRouter(
      record,
      {
        readings: readings.page("", MOST_PARTS, { routerId: record.id }),
        collets: collets.page("", MOST_PARTS, { routerId: record.id }),
      },
      at,
    );
}
