import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { buildApp } from "../app.ts";
import { readConfig } from "../config.ts";
import { openShopStore } from "../rooms/store.ts";
import { codesPage } from "./codes-page.ts";

const FOLDER = new URL("../../../../openapi/", import.meta.url);

const isCheck = process.argv.includes("--check");
writeOrCheck("openapi.json", await documentText());
writeOrCheck("CODES.md", codesPage());

function writeOrCheck(name: string, text: string): void {
  const file = fileURLToPath(new URL(name, FOLDER));
  if (!isCheck) {
    writeFileSync(file, text);
  } else if (readFileSync(file, "utf8") !== text) {
    process.stderr.write(`${file} is not what the routes say: run pnpm generate\n`);
    process.exitCode = 1;
  }
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
