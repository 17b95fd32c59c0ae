import { existsSync, readFileSync } from "node:fs";
import type { Config } from "../config.ts";
import { keyFileIn, makeKeyFile, readKeyFile } from "../signing/key-file.ts";
import { signingKeys } from "../signing/reads.ts";
import { opensAll, resealKeys } from "../signing/reseal.ts";
import { newSealingKey as madeKey, sealingWith } from "../signing/sealing.ts";
import { requireUnused } from "../store/open.ts";
import { modeForOthers } from "../store/private-file.ts";
import type { Store } from "../store/store.ts";
import { type Command, CommandError, fileNamed, print } from "./command.ts";
import { requireDatabase, withStore } from "./database.ts";

const WHY = "Sealed with another key at the machine with the command new-sealing-key.";
const IN_MEMORY = ":memory:";

type Places = Pick<Config, "signingKeys" | "sealingKey">;

export const newSealingKey: Command = {
  name: "new-sealing-key",
  usage: "FILE",
  meaning:
    "Seals the signing keys with another key: the one in the file, which is made with a new key when it is not there. All of them or none. The services must be stopped. What was cut off goes on when it is run again.",
  run: async (asked, config) => {
    const file = fileNamed(asked);
    requireDatabase(config);
    const before = keyBefore(config);
    const given = keyIn(file);
    if (given?.toLowerCase() === before.toLowerCase()) {
      throw new CommandError(
        `${file} holds the key that the service has already. Name a file that is not there.`,
      );
    }
    // A service would go on with the old key: it could neither sign nor say that something is the shop's own.
    await requireUnused(config.database);
    const keys = await withStore(config, (store) => reseal(store, { before, given, file }));
    print({ file, signingKeys: keys });
    process.stderr.write(nextStep(file, config));
  },
};

type Keys = { readonly before: string; readonly given: string | undefined; readonly file: string };

/** Seals every key again, or finds that it was done; says how many there are. The new key is on the disk before anything needs it. */
async function reseal({ answer, commit }: Store, { before, given, file }: Keys): Promise<number> {
  const records = await answer(signingKeys.inOrder());
  if (records.length === 0) {
    throw new CommandError(
      "There are no signing keys in the database yet. Start the service once, and stop it.",
    );
  }
  if (given !== undefined && opensAll(records, sealingWith(given))) return records.length;
  const from = sealingWith(before);
  const fresh = given ?? madeKey();
  const at = new Date().toISOString();
  const resealing = resealKeys(records, from, sealingWith(fresh), at);
  if (resealing.kind === "not-opened") {
    throw new CommandError(
      `The sealing key of the settings does not open these signing keys: ${resealing.kids.join(", ")}. Nothing was changed. Set RIMWISE_SEALING_KEY or RIMWISE_SIGNING_KEYS as the service has it.`,
    );
  }
  if (given === undefined) makeKeyFile(file, { sealingKey: fresh });
  if (keyIn(file) !== fresh)
    throw new CommandError(`Another program made ${file} just now. Nothing was changed.`);
  const { changes } = resealing;
  const result = await commit({ stamp: { by: "system", at, requestId: "command", why: WHY }, changes });
  if (result.kind === "committed") return records.length;
  throw new CommandError(
    "The signing keys were changed meanwhile. Nothing was sealed with the new key. Run it again.",
  );
}

/** What the keys are sealed with now, by the service's settings. */
function keyBefore({ signingKeys: file, sealingKey }: Places): string {
  const key = sealingKey ?? (file === IN_MEMORY ? undefined : readKeyFile(file)?.sealingKey);
  if (key !== undefined) return key;
  throw new CommandError(
    `Nothing here opens the signing keys: ${file} holds no sealing key. Set RIMWISE_SEALING_KEY or RIMWISE_SIGNING_KEYS as the service has it.`,
  );
}

/** The sealing key in a file; undefined when there is no file. */
function keyIn(file: string): string | undefined {
  if (!existsSync(file)) return undefined;
  const key = keyFileIn(readFileSync(file, "utf8"))?.sealingKey;
  if (key === undefined) {
    throw new CommandError(
      `${file} holds no sealing key. Name a file that is not there: it is made with a new key.`,
    );
  }
  const mode = modeForOthers(file);
  if (mode === undefined) return key;
  throw new CommandError(
    `Others than its owner may read ${file} (mode ${mode}), so its key is no secret. Name a file that is not there: it is made with a new key.`,
  );
}

function nextStep(file: string, { signingKeys, sealingKey }: Places): string {
  const step =
    sealingKey === undefined
      ? `Move ${file} to ${signingKeys}, for every process of the shop,`
      : `Set RIMWISE_SEALING_KEY to the sealingKey in ${file}, for every process of the shop,`;
  return `${step} and start them. Keep the old key as long as you keep backups or dumps made before: it opens theirs.\n`;
}
