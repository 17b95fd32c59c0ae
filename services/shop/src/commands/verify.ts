import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { folderOfCommand } from "../config.ts";
import { checkedCopy } from "./checked-copy.ts";
import { type Command, CommandError, print } from "./command.ts";
import { withStore } from "./database.ts";
import { headAsked, proveWhole } from "./proof.ts";

export const verify: Command = {
  name: "verify",
  usage: "[FILE] [--head SEQUENCE:HASH]",
  meaning:
    "Recomputes the history of the shop, or of a backup, and checks every signed checkpoint. With --head it must still hold the event that was the latest when the head was noted.",
  values: ["head"],
  run: async (asked, config) => {
    const head = headAsked(asked);
    const [file, ...more] = asked.words;
    if (more.length > 0) throw new CommandError("Name one backup, or none for the shop's own database.");
    if (file === undefined) {
      return print(await withStore(config, (store) => proveWhole(store, config, head)));
    }
    const folder = mkdtempSync(join(tmpdir(), "rimwise-verify-"));
    try {
      const { manifest, proof } = await checkedCopy(resolve(folderOfCommand(), file), folder, config, head);
      print({ manifest, proof });
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
};
