import { type FieldFault, notValid } from "../problems/problem.ts";
import type { TimeWindow } from "./reads.ts";

/** Times written in UTC with milliseconds sort as text in order of time, as long as the year has four digits. */
const SORTABLE = /^\d{4}-/;

/** A window whose times are written as events keep theirs. Throws a 422 naming a time that cannot be, or an end before its start. */
export function windowIn({ since, until }: TimeWindow): TimeWindow {
  const window = { since: momentIn("since", since), until: momentIn("until", until) };
  if (window.since !== undefined && window.until !== undefined && window.since > window.until) {
    throw notValid([timeFault("until", "This is before `since`.", "a time at or after `since`")]);
  }
  return window;
}

/** A fault of one of the times in a query. */
export function timeFault(name: keyof TimeWindow, message: string, accepted: string): FieldFault {
  return { in: "query", pointer: `/${name}`, message, accepted };
}

function momentIn(name: keyof TimeWindow, text: string | undefined): string | undefined {
  if (text === undefined) return undefined;
  const time = Date.parse(text);
  const moment = Number.isNaN(time) ? "" : new Date(time).toISOString();
  if (SORTABLE.test(moment)) return moment;
  throw notValid([
    timeFault(
      name,
      "There is no such time.",
      "a time such as 2026-03-02T08:00:00Z (RFC 3339), no leap second",
    ),
  ]);
}
