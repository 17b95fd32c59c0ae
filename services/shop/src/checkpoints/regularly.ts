import type { EventReads } from "../events/reads.ts";
import type { App } from "../http/app-type.ts";
import type { Commit } from "../store/port.ts";
import type { MakeCheckpoint } from "./make.ts";
import type { CheckpointReads } from "./reads.ts";
import type { CheckpointCause } from "./schema.ts";

type Parts = {
  readonly events: Pick<EventReads, "page" | "latest" | "hasOtherThan">;
  readonly checkpoints: Pick<CheckpointReads, "furthest">;
  readonly make: MakeCheckpoint;
  readonly commit: Commit;
  readonly now: () => Date;
};

/** Why a checkpoint is due now, if it is. */
type FindCause = (parts: Parts, now: Date) => Promise<CheckpointCause | undefined>;

const MOST_EVENTS_BETWEEN = 1000;
const HOUR_MS = 60 * 60 * 1000;
const LOOK_EVERY_MS = 60_000;

/**
 * Makes a checkpoint after every 1,000 events, and when an hour has passed with new ones, as long as the app is open. The
 * function it returns is to be called after each commit. A failure is logged, and the next look tries again.
 */
export function checkpointRegularly(app: App, parts: Parts): () => void {
  let making: Promise<void> | undefined;
  let isClosing = false;

  async function makeIfDue(findCause: FindCause): Promise<void> {
    try {
      const at = parts.now();
      const cause = await findCause(parts, at);
      if (cause === undefined) return;
      const stamp = { by: "system", at: at.toISOString(), requestId: "checkpoint" };
      const { change } = await parts.make(cause, stamp.at);
      await parts.commit({ stamp, changes: [change] });
    } catch (error) {
      app.log.error({ err: error }, "a checkpoint could not be made");
    }
  }

  const look = (findCause: FindCause) => {
    if (isClosing) return;
    // One at a time: two at once would both find the same one due.
    making ??= makeIfDue(findCause).finally(() => {
      making = undefined;
    });
  };
  const timer = setInterval(() => look(hourPassed), LOOK_EVERY_MS).unref();
  app.addHook("preClose", async () => {
    isClosing = true;
    clearInterval(timer);
    await making;
  });
  return () => look(manyCame);
}

async function manyCame({ events, checkpoints }: Parts): Promise<CheckpointCause | undefined> {
  const latest = (await events.latest())?.sequence ?? 0;
  const reached = (await checkpoints.furthest())?.sequence ?? 0;
  return latest - reached >= MOST_EVENTS_BETWEEN ? "events" : undefined;
}

async function hourPassed({ events, checkpoints }: Parts, now: Date): Promise<CheckpointCause | undefined> {
  const reached = await checkpoints.furthest();
  const since = reached?.createdAt ?? (await events.page(0, 1))[0]?.at;
  if (since === undefined) return undefined;
  // A clock set back must not put the next one off: an hour either way is an hour.
  if (Math.abs(now.getTime() - new Date(since).getTime()) < HOUR_MS) return undefined;
  return (await events.hasOtherThan("checkpoint.created", reached?.sequence ?? 0)) ? "hour" : undefined;
}
