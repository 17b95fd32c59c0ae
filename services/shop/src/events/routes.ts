import type { App } from "../http/app-type.ts";
import { linkNext } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import type { Doors } from "../http/routes.ts";
import { keys } from "../keys/reads.ts";
import { notValid } from "../problems/problem.ts";
import type { Answer } from "../store/store.ts";
import type { EventKind } from "./kinds-of-events.ts";
import { timeFault, windowIn } from "./moments.ts";
import { type EventCount, events, type TimeWindow } from "./reads.ts";
import {
  EventPageSchema,
  type EventSummary,
  EventSummarySchema,
  eventComponents,
  FeedQuery,
  SummaryQuery,
} from "./schema.ts";
import { eventCounts } from "./summary.ts";

const DAY_MS = 24 * 60 * 60 * 1000;
const USUAL_DAYS = 7;
const MOST_DAYS = 31;

export function eventRoutes(app: App, { answer, now }: Doors, kinds: readonly EventKind[]): void {
  for (const schema of eventComponents(kinds)) app.addSchema(schema);

  app.get(
    "/v1/events",
    {
      config: { scope: "events:read", operation: "list" },
      schema: {
        operationId: "listEvents",
        tags: ["events"],
        summary: "List what was changed, by whom, when and why",
        description:
          "All that is asked for must hold together. Events come in order of sequence, never of time.",
        querystring: FeedQuery,
        response: { 200: ref(EventPageSchema) },
      },
    },
    async (request, reply) => {
      const { after, limit, ...filter } = request.query;
      const rows = await answer(events.page(after, limit + 1, { ...filter, ...windowIn(filter) }));
      const data = rows.slice(0, limit);
      const last = data.at(-1);
      if (last === undefined || rows.length <= limit) return { data, nextCursor: null };
      const nextCursor = String(last.sequence);
      linkNext(request, reply, { after: nextCursor });
      return { data, nextCursor };
    },
  );

  app.get(
    "/v1/events/summary",
    {
      config: { scope: "events:read", operation: "act" },
      schema: {
        operationId: "summarizeEvents",
        tags: ["events"],
        summary: "Sum up who changed what how often",
        description: `A window of at most ${MOST_DAYS} days. Without \`until\` it ends now, without \`since\` it begins ${USUAL_DAYS} days before its end.`,
        querystring: SummaryQuery,
        response: { 200: ref(EventSummarySchema) },
      },
    },
    async (request) => {
      const window = boundedWindow(windowIn(request.query), now());
      const counts = await eventCounts(answer, window);
      return { ...window, callers: await callersIn(counts, answer) };
    },
  );
}

function boundedWindow({ since, until }: TimeWindow, now: Date): { since: string; until: string } {
  const end = until === undefined ? now : new Date(until);
  const start = since === undefined ? new Date(end.getTime() - USUAL_DAYS * DAY_MS) : new Date(since);
  const lengthMs = end.getTime() - start.getTime();
  if (lengthMs > MOST_DAYS * DAY_MS) {
    throw notValid([
      timeFault("since", "The window is too long.", `a time at most ${MOST_DAYS} days before the end`),
    ]);
  }
  if (lengthMs < 0) throw notValid([timeFault("since", "This is still to come.", "a time that is past")]);
  return { since: start.toISOString(), until: end.toISOString() };
}

/** Counts come in order of caller, so each caller's stand together. */
async function callersIn(counts: readonly EventCount[], answer: Answer): Promise<EventSummary["callers"]> {
  const callers: EventSummary["callers"] = [];
  for (const { by, type, count } of counts) {
    let caller = callers.at(-1);
    if (caller?.by !== by) {
      caller = { by, byName: (await answer(keys.find(by)))?.name ?? null, count: 0, changes: [] };
      callers.push(caller);
    }
    caller.count += count;
    caller.changes.push({ record: type.split(".", 1)[0] ?? type, type, count });
  }
  return callers;
}
