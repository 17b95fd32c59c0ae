import type { App } from "../http/app-type.ts";
import { backupsIn } from "./folder.ts";
import type { Backup } from "./schema.ts";

type Parts = {
  readonly folder: string;
  readonly everyHours: number;
  readonly make: (folder: string) => Promise<Backup>;
  readonly now: () => Date;
};

const HOUR_MS = 60 * 60 * 1000;
const LOOK_EVERY_MS = 60_000;

/**
 * Makes a backup when the newest in the folder is old enough, as long as the app is open: at the start, then by the
 * minute. A failure is logged, and the next look tries again.
 */
export function backUpRegularly(app: App, { folder, everyHours, make, now }: Parts): void {
  let making: Promise<void> | undefined;

  async function makeIfDue(): Promise<void> {
    try {
      const newest = backupsIn(folder).at(-1)?.createdAt;
      // A clock set back must not put the next one off: so many hours either way.
      const age = newest === undefined ? undefined : Math.abs(now().getTime() - new Date(newest).getTime());
      if (age !== undefined && age < everyHours * HOUR_MS) return;
      const { name, events } = await make(folder);
      app.log.info({ backup: name, events }, "backup made");
    } catch (error) {
      app.log.error({ err: error }, "a backup could not be made");
    }
  }

  const look = () => {
    making ??= makeIfDue().finally(() => {
      making = undefined;
    });
  };
  let timer: NodeJS.Timeout | undefined;
  app.addHook("onReady", async () => {
    timer = setInterval(look, LOOK_EVERY_MS).unref();
    look();
  });
  app.addHook("preClose", async () => {
    clearInterval(timer);
    await making;
  });
}
