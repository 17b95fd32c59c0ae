import { backUpInto } from "../backups/folder.ts";
import type { BackupSource } from "../backups/make.ts";
import { backUpRegularly } from "../backups/regularly.ts";
import { backupRoutes } from "../backups/routes.ts";
import type { Backup } from "../backups/schema.ts";
import type { BackupSettings } from "../config.ts";
import type { App } from "../http/app-type.ts";
import { oneAtATime } from "../http/one-at-a-time.ts";
import type { Doors } from "../http/routes.ts";
import type { Store } from "../store/store.ts";

type Parts = Omit<BackupSource, "now" | "copyTo"> &
  Pick<Store, "copyTo"> & { readonly settings: BackupSettings };

/** Backups, by the clock and when somebody asks: never two at once. None of a database that has tools of its own for that. */
export function backupRooms(app: App, doors: Doors, { settings, copyTo, ...source }: Parts): void {
  const { now } = doors;
  const { folder, everyHours, keep } = settings;
  if (copyTo === undefined) {
    backupRoutes(app, doors, { folder, make: undefined });
    return;
  }
  const alone = oneAtATime("backup-running", "Ask again when it is made.");
  const make = (into: string): Promise<Backup> =>
    alone(() => backUpInto(into, keep, { ...source, copyTo, now }));
  backupRoutes(app, doors, { folder, make });
  if (folder !== undefined && everyHours > 0) backUpRegularly(app, { folder, everyHours, make, now });
}
