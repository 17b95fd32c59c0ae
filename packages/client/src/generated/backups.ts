// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateBackupResponse,
  ListBackupsResponse,
} from "./types.gen.ts";

export function backupsOf(caller: Caller) {
  return {
    /** List the backups in the service's backup folder */
    list: (options?: CallOptions) =>
      caller.send<ListBackupsResponse>(
        { method: "GET", path: "/v1/backups" },
        options,
      ),

    /** Make a backup of the whole shop. It goes into the folder that `RIMWISE_BACKUP_FOLDER` names, under a name of the service's own, and is opened and counted before this answers. It holds the signing keys: keep it from others, and keep one on another machine. */
    create: (options?: WriteOptions) =>
      caller.send<CreateBackupResponse>(
        { method: "POST", path: "/v1/backups", isWrite: true },
        options,
      ),
  };
}
