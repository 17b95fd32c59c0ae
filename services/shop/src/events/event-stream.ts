import type { Bell } from "../store/bell.ts";
import type { EventRecord } from "./schema.ts";

type Parts = {
  readonly page: (after: number, most: number) => Promise<EventRecord[]>;
  readonly bell: Pick<Bell, "rings" | "wait">;
  /** Asked before each look at the table: a key may be revoked while its stream is open. */
  readonly mayGoOn: () => Promise<boolean>;
};

/** Proxies and clients take silence for a broken connection; common limits start at 30 s (common practice). */
export const HEARTBEAT_MS = 15_000;

/** How long browsers wait before they connect again. */
const RECONNECT_AFTER_MS = 1000;
const EVENTS_AT_A_TIME = 100;

/**
 * The events after a sequence, and on and on as they are committed, in the format of server-sent events (WHATWG HTML,
 * section 9.2). Each is read from the table in order, so none is missed and none comes twice. Nothing is read
 * ahead of what is taken. Ends when the signal says so, or the caller may no longer read.
 */
export async function* eventStream(
  after: number,
  signal: AbortSignal,
  { page, bell, mayGoOn }: Parts,
): AsyncGenerator<string, void, undefined> {
  yield `retry: ${RECONNECT_AFTER_MS}\n\n`;
  let last = after;
  while (!signal.aborted) {
    const heard = bell.rings();
    if (!(await mayGoOn())) return;
    const events = await page(last, EVENTS_AT_A_TIME);
    for (const event of events) {
      if (signal.aborted) return;
      yield frameOf(event);
      last = event.sequence;
    }
    if (events.length > 0) continue;
    const hasRung = await bell.wait(heard, HEARTBEAT_MS, signal);
    if (!hasRung && !signal.aborted) yield ": nothing new\n\n";
  }
}

/** JSON has no raw line ends, so an event is one line of data. */
function frameOf(event: EventRecord): string {
  return `id: ${event.sequence}\nevent: ${event.type}\ndata: ${JSON.stringify(event)}\n\n`;
}
