import { resolve } from "node:path";
import { folderOfCommand } from "../config.ts";
import { KINDS } from "../rooms/kinds.ts";
import { copyTables, digestOf } from "../store/move/copy.ts";
import { movedTables } from "../store/move/tables.ts";
import { isAtLevel, isPostgresql, openSource, openTarget, shownDatabase } from "../store/open.ts";
import { type Command, CommandError, print } from "./command.ts";
import { requireDatabase, withStore } from "./database.ts";
import { proveWhole } from "./proof.ts";

const TABLES = movedTables(KINDS);

export const move: Command = {
  name: "move",
  usage: "FROM TO",
  meaning:
    "Copies a shop from one database into another, new one, between SQLite and PostgreSQL either way, compares both and verifies the history. The services must be stopped. What was cut off goes on when it is run again. The signing keys are opened by what opened them.",
  run: async ({ words }, config) => {
    const [from, to, ...more] = words.map(databaseNamed);
    if (from === undefined || to === undefined || more.length > 0)
      throw new CommandError("Name the database to move from and the one to move into.");
    requireDatabase({ database: from });
    if (!(await isAtLevel(from)))
      throw new CommandError(
        "The database is of an earlier version. Start the service on it once, and stop it.",
      );
    const digest = await copied(from, to);
    const proof = await withStore({ ...config, database: to }, (store) =>
      proveWhole(store, config, undefined),
    );
    print({ from: shownDatabase(from), to: shownDatabase(to), digest, proof });
  },
};

async function copied(from: string, to: string): Promise<string> {
  const source = await openSource(from);
  try {
    const head = await source.head();
    const target = await openTarget(to, head, new Date());
    try {
      const begun = await target.movedHead();
      if (begun?.sequence !== head?.sequence || begun?.hash !== head?.hash) {
        throw new CommandError(
          `${shownDatabase(to)} was begun from another history, or from an earlier state of this one. Name a new database.`,
        );
      }
      await copyTables(source, target, TABLES);
      const [before, after] = [await digestOf(source, TABLES), await digestOf(target, TABLES)];
      if (before !== after)
        throw new CommandError("The two databases do not hold the same. Name a new one, and try again.");
      await target.finish();
      return after;
    } finally {
      await target.close();
    }
  } finally {
    await source.close();
  }
}

function databaseNamed(word: string): string {
  return isPostgresql(word) ? word : resolve(folderOfCommand(), word);
}
