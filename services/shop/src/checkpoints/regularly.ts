import { events } from "../events/reads.ts";
import type { App } from "../http/app-type.ts";
import { whileLeased } from "../store/leases.ts";
import { lookAtRings } from "../store/look-at-rings.ts";
import type { Question } from "../store/query.ts";
import type { Store } from "../store/store.ts";
import type { MakeCheckpoint } from "./make.ts";
import { checkpoints } from "./reads.ts";
import type { CheckpointCause } from "./schema.ts";

type Parts = Pick<Store, "answer" | "commit" | "bell" | "leases"> & {
  readonly make: MakeCheckpoint;
  readonly now: () => Date;
};

/** Why a checkpoint is due now, if it is. */
type FindCause = (now: Date) => Question<CheckpointCause | undefined>;

const LEASE = "checkpoint";
const MOST_EVENTS_BETWEEN = 1000;
const HOUR_MS = 60 * 60 * 1000;
const LOOK_EVERY_MS = 60_000;

/**
 * Makes a checkpoint after every 1,000 events, and when an hour has passed with new ones, as long as the app is
 * open. A failure is logged, and the next look tries again.
 */
export function checkpointRegularly(app: App, { answer, commit, bell, leases, make, now }: Parts): void {
  let making: Promise<void> | undefined;

  async function makeIfDue(findCause: FindCause): Promise<void> {
    try {
      if ((await answer(findCause(now()))) === undefined) return;
      await whileLeased(leases, LEASE, () => makeNow(findCause));
    } catch (error) {
      app.log.error({ err: error }, "a checkpoint could not be made");
    }
  }

  /** Looked at again: another process may have made it. */
  async function makeNow(findCause: FindCause): Promise<void> {
    const at = now();
    const cause = await answer(findCause(at));
    if (cause === undefined) return;
    const stamp = { by: "system", at: at.toISOString(), requestId: "checkpoint" };
    const { changes, expects = [] } = await make(cause, stamp.at);
    await commit({ stamp, changes, expects });
  }

  async function look(findCause: FindCause): Promise<void> {
    // One at a time: two at once would both find the same one due.
    making ??= makeIfDue(findCause).finally(() => {
      making = undefined;
    });
    await making;
  }
  const timer = setInterval(() => look(hourPassed), LOOK_EVERY_MS).unref();
  const end = lookAtRings(bell, () => look(manyCame));
  app.addHook("preClose", async () => {
    clearInterval(timer);
    await end();
    await making;
  });
}

function* manyCame(): Question<CheckpointCause | undefined> {
  const latest = (yield* events.latest())?.sequence ?? 0;
  const reached = (yield* checkpoints.furthest())?.sequence ?? 0;
  return latest - reached >= MOST_EVENTS_BETWEEN ? "events" : undefined;
}

function* hourPassed(now: Date): Question<CheckpointCause | undefined> {
  const reached = yield* checkpoints.furthest();
  const since = reached?.createdAt ?? (yield* events.page(0, 1))[0]?.at;
  if (since === undefined) return undefined;
  // A clock set back must not put the next one off: an hour either way is an hour.
  if (Math.abs(now.getTime() - new Date(since).getTime()) < HOUR_MS) return undefined;
  return (yield* events.hasOtherThan("checkpoint.created", reached?.sequence ?? 0)) ? "hour" : undefined;
}
