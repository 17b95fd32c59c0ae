import closeWithGrace from "close-with-grace";
import { buildApp } from "./app.ts";
import { ConfigError, readConfig } from "./config.ts";
import { grantFirstKey } from "./keys/first-key.ts";
import { openShopStore } from "./rooms/store.ts";

const GRACE_MS = 15_000;

try {
  await serve();
} catch (error) {
  process.stderr.write(`${reportOf(error)}\n`);
  process.exitCode = 1;
}

/** A setting that is wrong needs a sentence, anything else its stack. */
function reportOf(error: unknown): string {
  if (error instanceof ConfigError) return error.message;
  return error instanceof Error ? String(error.stack) : String(error);
}

async function serve(): Promise<void> {
  const config = readConfig();
  const store = await openShopStore(config.database);
  const firstKey = await grantFirstKey(store, config.firstKey);
  if (firstKey !== undefined) {
    process.stdout.write(`First manager's key, shown this once: ${firstKey}\n`);
  }
  const { app } = await buildApp({ config, store });
  closeWithGrace({ delay: GRACE_MS, logger: false }, async ({ err, signal }) => {
    if (err) app.log.fatal({ err }, "closing after an error");
    else app.log.info({ signal }, "closing");
    await app.close();
    await store.close();
  });
  await app.listen({ host: config.host, port: config.port });
}
