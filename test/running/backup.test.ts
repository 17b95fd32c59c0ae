import { copyFileSync, existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import Database from "better-sqlite3";
import { beforeAll, describe, expect, test } from "vitest";
import { PANEL_BIT } from "../contract/shop.ts";
import { builtService } from "./built-service.ts";
import { ask, exited, type Running, ran, type Settings, start, temporaryFile } from "./service-process.ts";

let service: readonly string[];
beforeAll(async () => {
  service = [await builtService()];
});

const command = (file: string, ...words: string[]) => ran([...service, ...words], { RIMWISE_DATABASE: file });
const add = async (shop: Running) => expect((await ask(shop, "/v1/bits", PANEL_BIT)).status).toBe(201);

/** A running shop whose last events are in the write-ahead log alone, and a backup of it made meanwhile. */
async function backedUpShop() {
  const file = temporaryFile();
  const shop = await start(service, file);
  await Promise.all(Array.from({ length: 40 }, () => add(shop)));
  const backup = join(dirname(file), "copy.backup");
  const { code, out, err } = await command(file, "backup", backup);
  expect([code, err]).toEqual([0, ""]);
  return { file, shop, backup, manifest: JSON.parse(out) };
}

let kept: Promise<Buffer> | undefined;

/** A backup of such a shop in a file of its own. */
async function aBackup(): Promise<string> {
  kept ??= backedUpShop().then(({ backup }) => readFileSync(backup));
  const path = `${temporaryFile()}.backup`;
  writeFileSync(path, await kept);
  return path;
}

const headOf = ({ head }: { head: { sequence: number; hash: string } }) => `${head.sequence}:${head.hash}`;

describe("a backup of a running shop", () => {
  test("holds every acknowledged change, and restored elsewhere it is the same shop with the same keys", async () => {
    const { shop, file, backup, manifest } = await backedUpShop();
    expect(manifest).toMatchObject({
      format: 1,
      events: 42,
      records: { bit: 40, key: 1, "signing-key": 1 },
      hasSealingKey: true,
    });
    expect(statSync(backup).mode & 0o777).toBe(0o600);
    expect(readdirSync(dirname(file)).filter((name) => name.startsWith("copy"))).toEqual(["copy.backup"]);
    shop.process.kill("SIGKILL");
    await exited(shop);

    const elsewhere = temporaryFile();
    const restored = await command(elsewhere, "restore", backup, "--head", headOf(manifest));
    expect([restored.code, restored.err]).toEqual([0, ""]);
    expect(JSON.parse(restored.out).proof).toMatchObject({ isIntact: true, checked: 42 });
    for (const path of [elsewhere, `${elsewhere}.signing-keys.json`])
      expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(readFileSync(`${elsewhere}.signing-keys.json`, "utf8")).toBe(
      readFileSync(`${file}.signing-keys.json`, "utf8"),
    );
    const again = await start(service, elsewhere, { RIMWISE_FIRST_KEY: shop.key });
    expect((await ask(again, "/v1/bits?limit=200")).body.data).toHaveLength(40);
    const proof = await ask(again, "/v1/events/verify", { head: manifest.head });
    expect(proof.body).toMatchObject({ isIntact: true, lastSequence: 42 });
  });

  test("does not hold what opens the signing keys when a setting has it: with that it is checked and restored", async () => {
    const settings = { RIMWISE_SEALING_KEY: "5e".repeat(32) };
    const file = temporaryFile();
    const shop = await start(service, file, settings);
    expect((await ask(shop, "/v1/events/checkpoints", {})).status).toBe(201);
    const given = (path: string, words: string[], own: Settings = settings) =>
      ran([...service, ...words], { RIMWISE_DATABASE: path, ...own });
    const backup = join(dirname(file), "copy.backup");
    const made = await given(file, ["backup", backup]);
    expect(JSON.parse(made.out)).toMatchObject({ hasSealingKey: false, signingKeyIds: [expect.any(String)] });
    expect((await given(temporaryFile(), ["verify", backup])).code).toBe(0);
    const without = await given(temporaryFile(), ["verify", backup], {});
    expect([without.code, without.err]).toEqual([
      1,
      expect.stringMatching(/^This backup does not hold .+RIMWISE_SEALING_KEY/),
    ]);
    const elsewhere = temporaryFile();
    expect((await given(elsewhere, ["restore", backup])).code).toBe(0);
    expect(existsSync(`${elsewhere}.signing-keys.json`)).toBe(false);
    const again = await start(service, elsewhere, { ...settings, RIMWISE_FIRST_KEY: shop.key });
    expect((await ask(again, "/v1/events/verify", {})).body).toMatchObject({
      isIntact: true,
      checkpoints: 1,
    });
  });

  test("is refused under a name that is taken, and of a database that is not there", async () => {
    const { file, backup } = await backedUpShop();
    const before = readFileSync(backup);
    expect(await command(file, "backup", backup)).toMatchObject({ code: 1, out: "" });
    expect(readFileSync(backup).equals(before)).toBe(true);
    const nowhere = temporaryFile();
    const refused = await command(nowhere, "backup", `${nowhere}.backup`);
    expect(refused.err).toMatch(/^RIMWISE_DATABASE: there is no database at .+\n$/);
    expect(existsSync(nowhere)).toBe(false);
  });
});

test("what the machine refuses is said in one sentence, and what was there stays in place", async () => {
  const { shop, file, backup } = await backedUpShop();
  shop.process.kill("SIGTERM");
  await exited(shop);
  const noFolder = await command(file, "backup", "/nowhere/at/all/shop.backup");
  expect([noFolder.code, noFolder.err]).toEqual([1, expect.stringMatching(/^ENOENT: .+\n$/)]);
  const settings = { RIMWISE_DATABASE: file, RIMWISE_SIGNING_KEYS: "/nowhere/at/all/keys.json" };
  const refused = await ran([...service, "restore", backup, "--replace"], settings);
  expect([refused.code, refused.err]).toEqual([1, expect.stringMatching(/^ENOENT: .+\n$/)]);
  expect(JSON.parse((await command(file, "verify")).out)).toMatchObject({ isIntact: true, checked: 42 });
});

describe("a history whose end was cut off", () => {
  test("shows by the records that its events made, and by a head kept elsewhere", async () => {
    const { shop, file, manifest } = await backedUpShop();
    const copy = temporaryFile();
    shop.process.kill("SIGTERM");
    await exited(shop);
    copyFileSync(file, copy);
    copyFileSync(`${file}.signing-keys.json`, `${copy}.signing-keys.json`);
    const cut = new Database(copy);
    cut.exec("DROP TRIGGER events_are_not_removed; DELETE FROM events WHERE sequence > 30");
    cut.close();
    const alone = await command(copy, "verify");
    expect([alone.code, alone.err]).toEqual([
      1,
      expect.stringMatching(/history does not tell|not what this event/),
    ]);
    const found = await command(copy, "verify", "--head", headOf(manifest));
    expect([found.code, found.err]).toEqual([1, expect.stringMatching(/not intact at event 3[01]\b/)]);
    const other = await command(file, "verify", "--head", `41:${"0".repeat(64)}`);
    expect([other.code, other.err]).toEqual([1, expect.stringMatching(/event 41: .+another hash/)]);
    expect((await command(file, "verify", "--head", headOf(manifest))).code).toBe(0);
    const shopAgain = await start(service, copy, { RIMWISE_FIRST_KEY: shop.key });
    const { body } = await ask(shopAgain, "/v1/events/verify", { head: manifest.head });
    expect(body).toMatchObject({ isIntact: false, broken: { sequence: 30, reason: "record-planted" } });
  });
});

describe("a restore", () => {
  test("goes over no database without a flag, over none in use at all, and keeps what was there", async () => {
    const { shop, file, backup } = await backedUpShop();
    await add(shop);
    expect(await command(file, "restore", backup)).toMatchObject({
      code: 1,
      err: expect.stringMatching(/--replace/),
    });
    expect(await command(file, "restore", backup, "--replace")).toMatchObject({
      code: 1,
      err: expect.stringMatching(/is in use\. Stop the service first/),
    });
    expect((await ask(shop, "/v1/bits?limit=200")).body.data, "nothing has changed").toHaveLength(41);
    shop.process.kill("SIGTERM");
    expect(await exited(shop)).toBe(0);
    const { code, out } = await command(file, "restore", backup, "--replace");
    expect(code).toBe(0);
    const { kept } = JSON.parse(out);
    expect(kept).toHaveLength(2);
    const bits = (path: string) => {
      const database = new Database(path, { readonly: true });
      const count = database.prepare("SELECT count(*) FROM bits").pluck().get();
      database.close();
      return count;
    };
    expect([bits(file), bits(kept[0])]).toEqual([40, 41]);
    expect(readdirSync(dirname(file)).filter((name) => name.includes("restoring"))).toEqual([]);
  });

  test.each([
    ["is damaged", (path: string) => overwrite(path), /damaged|malformed/],
    [
      "lacks its last events",
      (path: string) => tamper(path, "DELETE FROM events WHERE sequence > 30"),
      /manifest/,
    ],
    [
      "lacks events within",
      (path: string) => tamper(path, "DELETE FROM events WHERE sequence = 30"),
      /lacks events/,
    ],
    ["lacks a bit", (path: string) => tamper(path, "DELETE FROM bits WHERE number = 3"), /manifest/],
    [
      "has another history",
      (path: string) => tamper(path, "UPDATE events SET by = 'x' WHERE sequence = 9"),
      /event 9/,
    ],
    [
      "lacks its keys",
      (path: string) => tamper(path, "DELETE FROM enclosed WHERE name = 'signing-keys'"),
      /keys/,
    ],
    [
      "is newer",
      (path: string) => tamper(path, "INSERT INTO migrations VALUES ('9999-later.sql', '', '')"),
      /manifest/,
    ],
    ["is none", (path: string) => tamper(path, "DROP TABLE enclosed"), /not a backup/],
    ["is text", (path: string) => writeFileSync(path, "x".repeat(9000)), /not a backup|not a database/],
  ])("puts nothing in place of a backup that %s", async (_what, spoil, reason) => {
    const backup = await aBackup();
    spoil(backup);
    const elsewhere = temporaryFile();
    const verified = command(temporaryFile(), "verify", backup);
    const refused = await command(elsewhere, "restore", backup);
    expect([refused.code, refused.err]).toEqual([1, expect.stringMatching(reason)]);
    expect(refused.err).not.toMatch(/\n\s+at /);
    expect(readdirSync(dirname(elsewhere))).toEqual([]);
    expect((await verified).code).toBe(1);
  });

  test("is what a backup needs: the service does not start on the backup itself", async () => {
    const backup = await aBackup();
    const refused = await command(backup);
    expect([refused.code, refused.err]).toEqual([1, expect.stringMatching(/This is a backup.+restore/)]);
  });
});

function tamper(path: string, sql: string): void {
  const database = new Database(path);
  database.pragma("foreign_keys = OFF");
  database.exec("DROP TRIGGER events_are_not_changed; DROP TRIGGER events_are_not_removed");
  database.exec(sql);
  database.close();
}

function overwrite(path: string): void {
  const bytes = readFileSync(path);
  bytes.fill(0x5a, bytes.length - 5 * 4096, bytes.length - 4096);
  writeFileSync(path, bytes);
}
