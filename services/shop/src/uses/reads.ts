import { sql } from "drizzle-orm";
import { bitKind } from "../bits/kind.ts";
import type { Hold } from "../bits/state-schema.ts";
import { colletKind } from "../collets/kind.ts";
import { daysAfter } from "../http/moment.ts";
import { all, fieldsQuery, type Question } from "../store/query.ts";

// Written out, not bound: the index of what is held is used only when it can be read that only that is asked for.
const heldBits = fieldsQuery(bitKind, ["id", "hold"], (rows) =>
  rows.where(sql`${bitKind.column("state")} = 'held'`),
);
const heldCollets = fieldsQuery(colletKind, ["id", "hold"], (rows) =>
  rows.where(sql`${colletKind.column("condition")} = 'held'`),
);

/** How often somebody has taken something out of use in the last 24 hours that is out of use still: one use counts once. */
export function* holdsOf(by: string, at: string): Question<number> {
  const since = daysAfter(at, -1);
  const isTheirs = (hold: Hold | undefined) => hold?.by === by && hold.since > since;
  const held = [...(yield* all(heldBits)), ...(yield* all(heldCollets))];
  const causes = held.flatMap(({ id, hold }) => (hold && isTheirs(hold) ? [hold.causeId ?? id] : []));
  return new Set(causes).size;
}
