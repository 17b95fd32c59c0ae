import { setImmediate as nextTurn } from "node:timers/promises";
import type { Answer } from "../store/store.ts";
import { type EventCount, events, type TimeWindow } from "./reads.ts";

/** Events looked at before others get their turn. */
const EVENTS_IN_ONE_TURN = 5000;

/** How often each caller made events of each type in a window, in steady order. */
export async function eventCounts(answer: Answer, window: Required<TimeWindow>): Promise<EventCount[]> {
  const totals = new Map<string, EventCount>();
  const { first, last } = await answer(events.span(window));
  const end = Math.min(last, (await answer(events.latest()))?.sequence ?? 0);
  for (let from = first; from <= end; from += EVENTS_IN_ONE_TURN) {
    const slice = { first: from, last: Math.min(end, from + EVENTS_IN_ONE_TURN - 1) };
    for (const { by, type, count } of await answer(events.counts(slice, window))) {
      const name = `${by} ${type}`;
      totals.set(name, { by, type, count: count + (totals.get(name)?.count ?? 0) });
    }
    await nextTurn();
  }
  return [...totals.entries()].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, each]) => each);
}
