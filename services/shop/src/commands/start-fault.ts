import { accessSync, constants } from "node:fs";
import { type Config, ConfigError } from "../config.ts";
import { DatabaseFileError } from "../store/database-file-error.ts";
import { isPostgresql, shownDatabase } from "../store/open.ts";

/** Throws when backups are to go where there is no folder to write in, or of a database that has tools of its own for that. */
export function requireBackupFolder({ database, backups: { folder } }: Config): void {
  if (folder === undefined) return;
  if (isPostgresql(database)) {
    throw new ConfigError(
      "RIMWISE_BACKUP_FOLDER: a shop on PostgreSQL is backed up with pg_dump or pg_basebackup. Take this setting away.",
    );
  }
  try {
    accessSync(`${folder}/`, constants.W_OK);
  } catch (cause) {
    throw new ConfigError(
      `RIMWISE_BACKUP_FOLDER: ${folder} is not a folder that this user may write in. Make it, or name another.`,
      { cause },
    );
  }
}

/** What stopped the start as one sentence that names the setting; an error nobody foresaw stays itself. */
export function startFault(error: unknown, config: Config): unknown {
  if (error instanceof ConfigError || !(error instanceof Error)) return error;
  const sentence = sentenceOf(error, config);
  return sentence === undefined ? error : new ConfigError(sentence, { cause: error });
}

function sentenceOf(error: Error, { host, port, database: named }: Config): string | undefined {
  const database = shownIfReadable(named);
  if (error instanceof DatabaseFileError) {
    const isNamed = error.message.includes(database);
    return `RIMWISE_DATABASE: ${isNamed ? error.message : `${database}: ${error.message}`}`;
  }
  const code = "code" in error ? String(error.code).replace(/^(SQLITE_[A-Z]+).*/, "$1") : "";
  const isListening = "syscall" in error && ["listen", "getaddrinfo"].includes(String(error.syscall));
  switch (code) {
    case "EADDRINUSE":
      return `RIMWISE_PORT: port ${port} of ${host} is taken by another program. End that one, or choose another port.`;
    case "EADDRNOTAVAIL":
    case "ENOTFOUND":
    case "EAI_AGAIN":
      return `RIMWISE_HOST: this machine has no address ${host}. Name one of its own, such as 127.0.0.1.`;
    case "EACCES":
      return isListening
        ? `RIMWISE_PORT: this user may not listen on port ${port}. Choose one from 1024 on.`
        : `RIMWISE_DATABASE: this user may not open ${database}. Give it the right to, or name another file.`;
    case "ENOENT":
    case "ENOTDIR":
      return `RIMWISE_DATABASE: the folder of ${database} is not there. Make it, or name another file.`;
    case "EISDIR":
    case "SQLITE_CANTOPEN":
      return `RIMWISE_DATABASE: ${database} cannot be opened as a file. Name a file in a folder that this user may write in.`;
    case "SQLITE_NOTADB":
      return `RIMWISE_DATABASE: ${database} is not a database. Name the shop's own, or a new file.`;
    case "EROFS":
    case "SQLITE_READONLY":
      return `RIMWISE_DATABASE: ${database} is read-only. Make the file and its folder writable for this user.`;
    case "SQLITE_CORRUPT":
      return `RIMWISE_DATABASE: ${database} is damaged. Restore a backup.`;
    case "SQLITE_BUSY":
      return `RIMWISE_DATABASE: ${database} is in use by another program. End that one first.`;
    case "ENOSPC":
    case "SQLITE_FULL":
      return `RIMWISE_DATABASE: the disk of ${database} is full. Make room on it.`;
    default:
      return undefined;
  }
}

/** A database as a message may name it: of a URL that cannot be read, nothing is shown, for it may hold a password. */
function shownIfReadable(database: string): string {
  try {
    return shownDatabase(database);
  } catch {
    return isPostgresql(database) ? "postgresql://…" : database;
  }
}
