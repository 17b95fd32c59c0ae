// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type { Backup, BackupList } from "./types.gen.ts";

/** Copies of the whole shop, in the service's backup folder. */
export interface BackupsResource {
  /**
   * List the backups in the service's backup folder
   *
   * `GET /v1/backups`
   */
  list(options?: CallOptions): Answer<BackupList>;

  /**
   * Make a backup of the whole shop
   *
   * It goes into the folder that `RIMWISE_BACKUP_FOLDER` names, under a name of the service's own, and is opened and counted before this answers. It holds the signing keys and, unless it is in the settings, what opens them: keep it from others, and keep one on another machine.
   *
   * `POST /v1/backups`
   */
  create(options?: WriteOptions): Answer<Backup>;
}

export function backupsOf(caller: Caller): BackupsResource {
  return {
    list: (options) =>
      caller.send({ path: "/v1/backups" }, options),
    create: (options) =>
      caller.send({ method: "POST", path: "/v1/backups" }, options),
  };
}
