import { createKey } from "../keys/decide.ts";
import { newKeyText } from "../keys/key-text.ts";
import type { Command } from "./command.ts";
import { withStore } from "./database.ts";

const WHY = "Made at the machine with the command new-manager-key.";

export const newManagerKey: Command = {
  name: "new-manager-key",
  usage: "[NAME]",
  meaning:
    "Makes another manager's key and prints it, for when the last one is lost. The history says that it was made at the machine. The service may be running.",
  run: ({ words }, config) =>
    withStore(config, async ({ commit }) => {
      const name = words.join(" ") || "Manager's key made at the machine";
      const at = new Date().toISOString();
      const key = newKeyText();
      const { changes } = createKey({ name, role: "manager" }, key, at);
      await commit({ stamp: { by: "system", at, requestId: "command", why: WHY }, changes });
      process.stdout.write(`${key.text}\n`);
      process.stderr.write("Shown this once. Revoke the lost key with it: POST /v1/keys/{keyId}/revoke.\n");
    }),
};
