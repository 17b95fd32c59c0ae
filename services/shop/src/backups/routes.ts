import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import type { Doors } from "../http/routes.ts";
import { stampOf } from "../http/write.ts";
import { Problem } from "../problems/problem.ts";
import { backupsIn } from "./folder.ts";
import { type Backup, BackupListSchema, BackupSchema } from "./schema.ts";

type Parts = {
  /** Without one no backup is made over HTTP. */
  readonly folder: string | undefined;
  /** Undefined: the database is no file that could be copied. */
  readonly make: ((folder: string) => Promise<Backup>) | undefined;
};

const MANAGE = { scope: "backups:manage", operation: "act" } as const;
/** Every page is copied and read again. */
const TIME_LIMIT_MS = 10 * 60 * 1000;

export function backupRoutes(app: App, { answerOnce, now }: Doors, { folder, make }: Parts): void {
  for (const schema of [BackupSchema, BackupListSchema]) app.addSchema(schema);

  app.get(
    "/v1/backups",
    {
      config: MANAGE,
      schema: {
        operationId: "listBackups",
        tags: ["backups"],
        summary: "List the backups in the service's backup folder",
        response: { 200: ref(BackupListSchema) },
      },
    },
    async () => {
      requireMade(make);
      return { data: backupsIn(given(folder)) };
    },
  );

  app.post(
    "/v1/backups",
    {
      config: { ...MANAGE, timeLimitMs: TIME_LIMIT_MS },
      schema: {
        operationId: "createBackup",
        tags: ["backups"],
        summary: "Make a backup of the whole shop",
        description:
          "It goes into the folder that `RIMWISE_BACKUP_FOLDER` names, under a name of the service's own, and is opened and counted before this answers. It holds the signing keys and, unless it is in the settings, what opens them: keep it from others, and keep one on another machine.",
        response: { 201: ref(BackupSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const backup = await requireMade(make)(given(folder));
        request.log.info({ backup: backup.name, events: backup.events }, "backup made");
        return { stamp: stampOf(request, now()), changes: [], status: 201, body: backup };
      }),
  );
}

function requireMade<Make>(make: Make | undefined): Make {
  if (make !== undefined) return make;
  throw new Problem(
    "backup-elsewhere",
    "A shop on PostgreSQL is backed up with pg_dump or pg_basebackup, by whoever runs the database.",
  );
}

function given(folder: string | undefined): string {
  if (folder !== undefined) return folder;
  throw new Problem(
    "backup-folder-missing",
    "Set RIMWISE_BACKUP_FOLDER to a folder on the service's machine and start the service again.",
  );
}
