import { type Router, strictestPolicy } from "@rimwise/domain";
import { shopLayerQuery } from "../shop-policy/reads.ts";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordQueries, recordReads } from "../store/record-reads.ts";
import type { RouterRecord } from "./schema.ts";
import { readingsUntil, usableRouter } from "./usable.ts";

export type RouterReads = RecordReads<"router"> & {
  /** A router as it can be used at a moment. */
  readonly usable: (record: RouterRecord, at: string) => Promise<Router>;
  /** Until when the readings it is used by all still count; undefined where there are none. */
  readonly readingsUntil: (record: RouterRecord, at: string) => Promise<string | undefined>;
};

/** What is read of a router's readings and collets at most; a router has a few dozen. */
const MOST_PARTS = 1000;

export function routerReads(database: Database): RouterReads {
  const usable = usableRouterQuery(database);
  const readings = recordQueries(database, "dial-reading");
  const shopLayer = shopLayerQuery(database);
  return {
    ...recordReads(database, "router"),
    usable: async (record, at) => usable(record, at),
    readingsUntil: async (record, at) =>
      readingsUntil(
        record,
        { readings: readings.newest(MOST_PARTS, { routerId: record.id }) },
        at,
        strictestPolicy(shopLayer()),
      ),
  };
}

/** A router as it can be used at a moment, inside a transaction. */
export function usableRouterQuery(database: Database): (record: RouterRecord, at: string) => Router {
  const readings = recordQueries(database, "dial-reading");
  const collets = recordQueries(database, "collet");
  const shopLayer = shopLayerQuery(database);
  return (record, at) =>
    usableRouter(
      record,
      {
        readings: readings.newest(MOST_PARTS, { routerId: record.id }),
        collets: collets.page("", MOST_PARTS, { routerId: record.id }),
      },
      at,
      strictestPolicy(shopLayer()),
    );
}
