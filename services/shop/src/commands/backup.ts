import { makeBackup } from "../backups/make.ts";
import { KINDS } from "../rooms/kinds.ts";
import { copyDatabaseFile } from "../store/files.ts";
import { type Command, fileNamed, print } from "./command.ts";
import { requireDatabase, requireFile } from "./database.ts";

export const backup: Command = {
  name: "backup",
  usage: "FILE",
  meaning:
    "Copies the whole shop, signing keys included, into one new file, checks it, and prints what is in it. The service may be running.",
  run: async (asked, config) => {
    const file = fileNamed(asked);
    const { database } = config;
    requireFile(database, "pg_dump");
    requireDatabase(config);
    const copyTo = (copy: string) => copyDatabaseFile(database, copy);
    print(await makeBackup(file, { copyTo, kinds: KINDS, keySettings: config, now: () => new Date() }));
  },
};
