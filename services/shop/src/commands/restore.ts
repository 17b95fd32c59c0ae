import { existsSync, mkdtempSync, readFileSync, renameSync, rmSync } from "node:fs";
import { dirname } from "node:path";
import { keptCheckpointFile } from "../checkpoints/kept.ts";
import type { Config } from "../config.ts";
import { whileUnused } from "../store/files.ts";
import { flushFile, writePrivateFile } from "../store/private-file.ts";
import { type CheckedCopy, checkedCopy } from "./checked-copy.ts";
import { type Command, CommandError, fileNamed, print } from "./command.ts";
import { requireFile } from "./database.ts";
import { headAsked } from "./proof.ts";

const IN_MEMORY = ":memory:";
const FILES_OF_DATABASE = ["", "-wal", "-shm"];

export const restore: Command = {
  name: "restore",
  usage: "FILE [--replace] [--head SEQUENCE:HASH]",
  meaning:
    "Checks a backup and puts it in place. Refuses when there is a database already; with --replace that one is kept beside it, unless it is in use.",
  flags: ["replace"],
  values: ["head"],
  run: async (asked, config) => {
    const file = fileNamed(asked);
    const head = headAsked(asked);
    const { database, signingKeys } = config;
    requireFile(database, "pg_restore");
    if (database === IN_MEMORY) {
      throw new CommandError("RIMWISE_DATABASE: name the file that the shop is to be kept in.");
    }
    const there = filesInPlace(config).filter(existsSync);
    if (there.length > 0 && !asked.flags.has("replace")) {
      throw new CommandError(
        `${there.join(" and ")} would be replaced. Give --replace to keep what is there under another name, or name another RIMWISE_DATABASE.`,
      );
    }
    // On the same disk, so that what was checked is put in place by a renaming.
    const folder = mkdtempSync(`${database}.restoring-`);
    try {
      const checked = await checkedCopy(file, folder, config, head);
      const kept = putInPlace(checked, config, new Date());
      print({ database, signingKeys, kept, manifest: checked.manifest, proof: checked.proof });
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
};

function filesInPlace({ database, signingKeys }: Config): string[] {
  // The newest checkpoint is of the history that is replaced: it would refute the one put in its place.
  const checkpoint = keptCheckpointFile(signingKeys) ?? [];
  return [...FILES_OF_DATABASE.map((suffix) => `${database}${suffix}`), signingKeys].concat(checkpoint);
}

/**
 * Puts keys and database in place, the keys first: no database is ever there without them. Gives where the earlier files are; when
 * something fails they are put back.
 */
function putInPlace(checked: CheckedCopy, config: Config, at: Date): string[] {
  const suffix = `.before-restore-${at.toISOString().replaceAll(":", "")}`;
  const replaced = filesInPlace(config).filter(
    (file) => existsSync(file) && !(file === config.signingKeys && checked.signingKeys === undefined),
  );
  const place = () => {
    const kept: string[] = [];
    try {
      for (const file of replaced) {
        renameSync(file, `${file}${suffix}`);
        kept.push(file);
      }
      // Written again, not renamed: the keys may be on another disk.
      if (checked.signingKeys !== undefined) {
        writePrivateFile(config.signingKeys, readFileSync(checked.signingKeys, "utf8"));
      }
      renameSync(checked.database, config.database);
      flushFile(dirname(config.database));
    } catch (error) {
      for (const file of kept) renameSync(`${file}${suffix}`, file);
      throw error;
    }
  };
  if (existsSync(config.database)) whileUnused(config.database, place);
  else place();
  return replaced.filter((file) => existsSync(`${file}${suffix}`)).map((file) => `${file}${suffix}`);
}
