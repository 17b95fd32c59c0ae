import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { SETTINGS } from "@rimwise/shop";
import { describe, expect, test } from "vitest";
import { PANEL_BIT } from "../contract/shop.ts";
import { copyBuiltService } from "./built-service.ts";
import { ask, exited, freePort, ready, run, type Settings, temporaryFolder } from "./service-process.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const DOCS = join(ROOT, "services/shop/docs");
const SERVE = "node services/shop/dist/main.js";
/** What needs the network and minutes. The scripts exist, and what they make is put there by the test. */
const NOT_PLAYED = ["npx -y pnpm@10 install", "npx -y pnpm@10 build", "git pull"];

/** The commands of a page, as they stand there. */
function commandsOf(page: string): string[] {
  const blocks = [...readFileSync(page, "utf8").matchAll(/^```sh\n([\s\S]+?)^```/gm)];
  return blocks.flatMap(([, block = ""]) => block.trim().split("\n"));
}

/** A checkout in which this was built, with migrations of its own. */
async function checkout(): Promise<string> {
  const folder = temporaryFolder();
  mkdirSync(join(folder, "services/shop/dist"), { recursive: true });
  await copyBuiltService(join(folder, "services/shop/dist"));
  cpSync(join(ROOT, "migrations"), join(folder, "migrations"), { recursive: true });
  for (const name of ["assets", "node_modules", "package.json"])
    symlinkSync(join(ROOT, "services/shop", name), join(folder, "services/shop", name));
  return folder;
}

describe("a newcomer who follows the README and the pages it names", () => {
  const folder = { path: "" };
  const settings: Record<string, string> = {};

  const line = (text: string, more: Settings = {}) =>
    run(["-c", `cd ${folder.path} && exec ${text}`], { ...settings, ...more }, "sh");

  async function serve() {
    const shop = line(SERVE);
    const url = `http://127.0.0.1:${settings["RIMWISE_PORT"]}`;
    await ready(url, shop);
    return { ...shop, url };
  }

  async function played(commands: readonly string[], more: Settings = {}) {
    const printed: string[] = [];
    for (const command of commands) {
      const child = line(command, more);
      expect(await exited(child), `${command}\n${child.err()}`).toBe(0);
      printed.push(child.out());
    }
    return printed;
  }

  test("has a shop that is backed up, restored, upgraded and opened again, without reading a source", async () => {
    folder.path = await checkout();
    settings["RIMWISE_PORT"] = String(await freePort());
    const readme = readFileSync(join(ROOT, "README.md"), "utf8");
    const [, runIt = ""] = /## Run it\n+```sh\n([\s\S]+?)```/.exec(readme) ?? [];
    expect(runIt.trim().split("\n")).toEqual([...NOT_PLAYED.slice(0, 2), SERVE]);
    const { scripts } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
    expect(scripts.build).toMatch(/bundle$/);
    for (const page of ["install", "proxy", "backups", "upgrade", "lost-key"])
      expect(readme).toContain(`services/shop/docs/${page}.md`);

    let shop = await serve();
    const keyFile = join(folder.path, "rimwise.sqlite.first-key");
    await expect.poll(() => existsSync(keyFile)).toBe(true);
    let key = readFileSync(keyFile, "utf8").trim();
    const count = async () => (await ask({ url: shop.url, key }, "/v1/bits")).body.data.length;
    const add = async () =>
      expect((await ask({ url: shop.url, key }, "/v1/bits", PANEL_BIT)).status).toBe(201);
    await add();

    const [backup = "", verify = "", verifyBackup = "", restore = "", ...more] = commandsOf(
      join(DOCS, "backups.md"),
    );
    expect(more).toEqual([]);
    const [manifest = ""] = await played([backup]);
    const { sequence, hash } = JSON.parse(manifest).head;
    const HEAD = `${sequence}:${hash}`;
    await add();
    await played([verify, verifyBackup], { HEAD });
    const refused = line(restore);
    expect([await exited(refused), refused.err()]).toEqual([1, expect.stringContaining("Stop the service")]);
    shop.process.kill("SIGTERM");
    expect(await exited(shop)).toBe(0);
    await played([restore]);
    shop = await serve();
    expect(await count(), "the shop as it was backed up").toBe(1);

    const upgrade = commandsOf(join(DOCS, "upgrade.md"));
    expect(upgrade.slice(1, 4).sort()).toEqual([...NOT_PLAYED].sort());
    await played(upgrade.slice(0, 1));
    writeFileSync(
      join(folder.path, "migrations/sqlite/9999-next.sql"),
      "CREATE TABLE next (id TEXT) STRICT;",
    );
    shop.process.kill("SIGTERM");
    await exited(shop);
    shop = await serve();
    expect(await count()).toBe(1);
    const [proof = ""] = await played(upgrade.slice(4));
    expect(JSON.parse(proof).isIntact).toBe(true);
    expect(readdirSync(folder.path).some((name) => name.startsWith("rimwise.sqlite.before-9999-"))).toBe(
      true,
    );

    const [lostKey = ""] = await played(commandsOf(join(DOCS, "lost-key.md")));
    key = lostKey.trim();
    expect(await count()).toBe(1);
    shop.process.kill("SIGTERM");
    expect(await exited(shop)).toBe(0);
  }, 120_000);

  test("finds no setting in them that the service does not know", () => {
    for (const name of readdirSync(DOCS)) {
      const named = [...readFileSync(join(DOCS, name), "utf8").matchAll(/RIMWISE_[A-Z_]+/g)].flat();
      for (const setting of named) expect(Object.keys(SETTINGS.properties), name).toContain(setting);
    }
  });
});
