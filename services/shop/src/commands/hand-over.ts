import { resolve } from "node:path";
import type { Config } from "../config.ts";
import { ConfigError, folderOfCommand } from "../config.ts";
import type { DeliverKey } from "../keys/first-key.ts";
import { isPostgresql } from "../store/open.ts";
import { writePrivateFile } from "../store/private-file.ts";

const IN_MEMORY = ":memory:";

/**
 * How the first manager's key gets to whoever starts the service: shown in their terminal, or else in a file that only its
 * owner reads, because what is printed without a terminal ends in a log. Throws when there would be neither.
 */
export function handOver({ database, firstKey }: Config): DeliverKey {
  if (process.stdout.isTTY) {
    return (key) => void process.stdout.write(`First manager's key, shown this once: ${key}\n`);
  }
  if (database === IN_MEMORY && firstKey === undefined) {
    throw new ConfigError(
      "RIMWISE_FIRST_KEY: a database in memory needs one when no terminal is there to show one in.",
    );
  }
  const file = isPostgresql(database)
    ? resolve(folderOfCommand(), "rimwise.first-key")
    : `${database}.first-key`;
  return (key) => {
    writePrivateFile(file, `${key}\n`);
    process.stderr.write(`The first manager's key is in ${file}. Take it from there and remove the file.\n`);
  };
}
