import type { DialReading, Policy, Router } from "@rimwise/domain";
import { collets } from "../collets/kind.ts";
import { dialReadings } from "../dial-readings/kind.ts";
import type { RouterRecord } from "../routers/schema.ts";
import type { Question } from "../store/query.ts";
import { type Held, heldAgainst, readingsCountUntil } from "./readings.ts";
import { routerAsUsable } from "./usable.ts";

/** How many readings and collets of a router are read at most; a router has a few dozen. */
const MOST_PARTS = 1000;

/** A router as it can be used at a moment, under the shop's policy. */
export function* usableRouter(record: RouterRecord, at: string, policy: Policy): Question<Router> {
  const of = { routerId: record.id };
  const readings = yield* dialReadings.newest(MOST_PARTS, of);
  const fitted = yield* collets.page("", MOST_PARTS, of);
  return routerAsUsable(record, { readings, collets: fitted }, at, policy);
}

/** Until when the readings that a router is used by all still count; undefined when there are none. */
export function* readingsUntil(
  record: RouterRecord,
  at: string,
  policy: Policy,
): Question<string | undefined> {
  const readings = yield* dialReadings.newest(MOST_PARTS, { routerId: record.id });
  return readingsCountUntil(record, readings, at, policy);
}

/** Holds a new reading of a router against those that are current at a moment. */
export function* holdAgainst(
  reading: DialReading,
  record: RouterRecord,
  at: string,
  policy: Policy,
): Question<Held> {
  const readings = yield* dialReadings.newest(MOST_PARTS, { routerId: record.id });
  return heldAgainst(reading, record, readings, at, policy);
}
