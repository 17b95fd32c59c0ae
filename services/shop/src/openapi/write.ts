import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { buildApp } from "../app.ts";
import { readConfig } from "../config.ts";
import { openShopStore } from "../rooms/store.ts";

const FILE = fileURLToPath(new URL("../../../../openapi/openapi.json", import.meta.url));

const text = await documentText();
if (!process.argv.includes("--check")) {
  writeFileSync(FILE, text);
} else if (readFileSync(FILE, "utf8") !== text) {
  process.stderr.write(`${FILE} is not what the routes say: run pnpm generate\n`);
  process.exitCode = 1;
}

async function documentText(): Promise<string> {
  const store = await openShopStore(":memory:");
  const config = readConfig({ RIMWISE_DATABASE: ":memory:", RIMWISE_LOG_LEVEL: "silent" });
  const { app, document } = await buildApp({ config, store });
  await app.ready();
  const written = `${JSON.stringify(document(), null, 2)}\n`;
  await app.close();
  await store.close();
  return written;
}
