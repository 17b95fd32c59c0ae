import type { Pool } from "pg";
import type { Measure } from "../store.ts";

/** How far behind something was when it was last looked at, in seconds; undefined while it is not known. */
export type Lag = {
  /** From a question to its answer. */
  readonly roundTripS: number | undefined;
  /** From a commit to its replay by the slowest standby. Known where the service's role may see it. */
  readonly standbyS: number | undefined;
};

/** The connections of a pool, and how late the server and its standbys are. */
export function measuresOf(pool: Pool, lag: () => Lag): readonly Measure[] {
  return [
    {
      name: "database_pool_connections",
      help: "Connections to the database, by what they do.",
      values: () => [
        { labels: { state: "in-use" }, value: pool.totalCount - pool.idleCount },
        { labels: { state: "idle" }, value: pool.idleCount },
      ],
    },
    {
      name: "database_pool_waiting",
      help: "Requests that wait for a connection to the database.",
      values: () => [{ labels: {}, value: pool.waitingCount }],
    },
    {
      name: "database_round_trip_seconds",
      help: "Time from the latest look at the database to its answer. Absent while there is none.",
      values: () => known(lag().roundTripS),
    },
    {
      name: "database_standby_lag_seconds",
      help: "How long the slowest standby took to replay the latest commit. Absent when there is none, or the service's role may not see it.",
      values: () => known(lag().standbyS),
    },
  ];
}

function known(value: number | undefined) {
  return value === undefined ? [] : [{ labels: {}, value }];
}
