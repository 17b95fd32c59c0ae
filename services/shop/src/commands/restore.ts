import { existsSync, mkdtempSync, renameSync, rmSync } from "node:fs";
import { dirname } from "node:path";
import type { Config } from "../config.ts";
import { flushFile } from "../store/private-file.ts";
import { whileUnused } from "../store/sqlite/copy.ts";
import { type CheckedCopy, checkedCopy } from "./checked-copy.ts";
import { type Command, CommandError, fileNamed, print } from "./command.ts";
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
      const checked = await checkedCopy(file, folder, head);
      const kept = putInPlace(checked, config, new Date());
      print({ database, signingKeys, kept, manifest: checked.manifest, proof: checked.proof });
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
};

function filesInPlace({ database, signingKeys }: Config): string[] {
  return [...FILES_OF_DATABASE.map((suffix) => `${database}${suffix}`), signingKeys];
}

/** Puts keys and database in place, the keys first: no database is ever there without them. Gives where the earlier files are. */
function putInPlace(checked: CheckedCopy, config: Config, at: Date): string[] {
  const suffix = `.before-restore-${at.toISOString().replaceAll(":", "")}`;
  const kept: string[] = [];
  const place = () => {
    for (const file of filesInPlace(config).filter(existsSync)) {
      if (file === config.signingKeys && checked.signingKeys === undefined) continue;
      renameSync(file, `${file}${suffix}`);
      kept.push(`${file}${suffix}`);
    }
    if (checked.signingKeys !== undefined) renameSync(checked.signingKeys, config.signingKeys);
    renameSync(checked.database, config.database);
    flushFile(dirname(config.signingKeys));
    flushFile(dirname(config.database));
  };
  if (existsSync(config.database)) whileUnused(config.database, place);
  else place();
  return kept;
}
