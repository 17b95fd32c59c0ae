import closeWithGrace from "close-with-grace";
import { buildApp } from "../app.ts";
import type { Config } from "../config.ts";
import { grantFirstKey } from "../keys/first-key.ts";
import { openShopStore } from "../rooms/store.ts";
import type { Command } from "./command.ts";
import { handOver } from "./hand-over.ts";
import { requireBackupFolder, startFault } from "./start-fault.ts";

const GRACE_MS = 15_000;
const LOOPBACK = /^(localhost|127\.[\d.]+|\[::1\]|0\.0\.0\.0|\[::\])$/;

export const serve: Command = {
  name: "serve",
  usage: "",
  meaning: "Serves until it is stopped. The same as no command.",
  run: async (_asked, config) => {
    try {
      await start(config);
    } catch (error) {
      throw startFault(error, config);
    }
  },
};

async function start(config: Config): Promise<void> {
  requireBackupFolder(config);
  const deliver = handOver(config);
  const store = await openShopStore(config.database);
  const { app } = await buildApp({ config, store }).catch(async (error) => {
    await store.close();
    throw error;
  });
  try {
    if (config.firstKey !== undefined) await grantFirstKey(store, config.firstKey);
    await app.listen({ host: config.host, port: config.port });
    // One that is made is shown once: not before the start has succeeded.
    if (config.firstKey === undefined) await grantFirstKey(store, undefined, { deliver });
  } catch (error) {
    await app.close();
    await store.close();
    throw error;
  }
  closeWithGrace({ delay: GRACE_MS, logger: false }, async ({ err, signal }) => {
    if (err) app.log.fatal({ err }, "closing after an error");
    else app.log.info({ signal }, "closing");
    await app.close();
    await store.close();
  });
  if (LOOPBACK.test(new URL(config.publicUrl).hostname)) {
    app.log.warn(
      `RIMWISE_PUBLIC_URL: labels and sheets printed now lead to ${config.publicUrl}, which no phone reaches. Set it to the address that phones use.`,
    );
  }
}
