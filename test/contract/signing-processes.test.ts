import { existsSync, readFileSync } from "node:fs";
import { dirname } from "node:path";
import { buildApp, openShopStore, readConfig } from "@rimwise/shop";
import { describe, expect, test } from "vitest";
import { behindTheService, copyOf, newDatabase } from "../../services/shop/testing/behind-the-service.ts";
import { builtService } from "../running/built-service.ts";
import { ask, exited, start } from "../running/service-process.ts";
import { keptKeys, keyFile, PUBLISHED } from "./key-file.ts";
import { secondProcess } from "./second-process.ts";
import { openShop, type Shop } from "./shop.ts";

/** Starts at the same moment that are tried: each of three processes. */
const ROUNDS = Number(process.env["KILL_ROUNDS"] ?? 1);

type Listed = { id: string; isCurrent: boolean };

const listed = async ({ ask }: Shop): Promise<Listed[]> => (await ask("GET", "/v1/signing-keys")).body.data;
const idsOf = (keys: readonly { id: string }[]) => keys.map(({ id }) => id);
const rotate = ({ ask }: Shop, key: string) =>
  ask("POST", "/v1/signing-keys/rotate", { headers: { "Idempotency-Key": key } });
const isIntact = async ({ ask }: Shop) =>
  (await ask("POST", "/v1/events/verify", { body: {} })).body.isIntact;

describe("the signing keys of a shop with two processes", () => {
  test("are changed by one and used by the other at once", async () => {
    const one = await openShop();
    const other = await secondProcess(one);
    await rotate(one, "yearly");
    const keys = await listed(other);
    expect(keys).toEqual(await listed(one));
    const { body } = await other.ask("POST", "/v1/events/checkpoints");
    expect(body.signingKeyId).toBe(keys[1]?.id);
    const { body: status } = await other.ask("GET", "/v1/approvals/status", { key: null });
    const header = JSON.parse(Buffer.from(String(status.jws).split(".")[0] ?? "", "base64url").toString());
    expect(header.kid).toBe(keys[1]?.id);
    expect(await isIntact(one)).toBe(true);
  });

  test("changed by both at once are all kept, one of them signs, and one request counts once", async () => {
    const one = await openShop();
    const other = await secondProcess(one);
    const asked = ["a", "b", "c"].flatMap((key) => [one, other].map((shop) => ({ shop, key })));
    await Promise.all(asked.map(({ shop, key }) => rotate(shop, key)));
    for (const { shop, key } of asked) expect((await rotate(shop, key)).status).toBe(200);
    const keys = await listed(one);
    expect(new Set(idsOf(keys)).size).toBe(4);
    expect(keys.filter(({ isCurrent }) => isCurrent)).toHaveLength(1);
    expect(await isIntact(other)).toBe(true);
  });

  test("are one when both start on a new database at the same moment", async () => {
    const RIMWISE_SIGNING_KEYS = keyFile();
    const RIMWISE_DATABASE = newDatabase(dirname(RIMWISE_SIGNING_KEYS));
    const config = readConfig({ RIMWISE_DATABASE, RIMWISE_SIGNING_KEYS, RIMWISE_LOG_LEVEL: "silent" });
    const stores = [await openShopStore(RIMWISE_DATABASE), await openShopStore(RIMWISE_DATABASE)];
    const apps = await Promise.all(stores.map((store) => buildApp({ config, store })));
    const published = await Promise.all(
      apps.map(async ({ app }) => (await app.inject("/.well-known/jwks.json")).json().keys),
    );
    expect(published[0]).toHaveLength(1);
    expect(published[1]).toEqual(published[0]);
    for (const { app } of apps) await app.close();
    for (const store of stores) await store.close();
  });
});

describe("a shop whose signing keys are in the file of an earlier version", () => {
  const earlier = { keys: [{ ...PUBLISHED, createdAt: "2026-03-02T08:00:00.000Z" }] };
  const content = (file: string) => JSON.parse(readFileSync(file, "utf8"));

  test("has them taken over once: the file keeps what opens them and no key that signs", async () => {
    const file = keyFile(earlier);
    const shop = await openShop({ RIMWISE_SIGNING_KEYS: file });
    expect(await listed(shop)).toMatchObject([{ id: PUBLISHED.kid, createdAt: earlier.keys[0]?.createdAt }]);
    expect(Object.keys(content(file))).toEqual(["sealingKey"]);
    const again = await secondProcess(shop);
    expect(idsOf(await listed(again))).toEqual([PUBLISHED.kid]);
  });

  test.each(["the file", "a setting"])(
    "has them once, under one key of %s, when several processes take them over at the same moment",
    async (where) => {
      const build = await builtService();
      for (let round = 0; round < ROUNDS; round += 1) {
        const RIMWISE_SIGNING_KEYS = keyFile(earlier);
        const database = newDatabase(dirname(RIMWISE_SIGNING_KEYS));
        await (await openShopStore(database)).close();
        const settings = {
          RIMWISE_SIGNING_KEYS,
          RIMWISE_FIRST_KEY: "a-first-manager's-key-for-the-tests-0123456789",
          ...(where === "a setting" && { RIMWISE_SEALING_KEY: "5e".repeat(32) }),
        };
        const shops = await Promise.all([1, 2, 3].map(() => start([build], database, settings)));
        for (const { url } of shops) {
          const published = await (await fetch(`${url}/.well-known/jwks.json`)).json();
          expect(published.keys.map(({ kid }: { kid: string }) => kid)).toEqual([PUBLISHED.kid]);
        }
        expect((await keptKeys({ file: database })).map(({ kid }) => kid)).toEqual([PUBLISHED.kid]);
        if (where === "a setting") expect(existsSync(RIMWISE_SIGNING_KEYS)).toBe(false);
        else expect(Object.keys(content(RIMWISE_SIGNING_KEYS))).toEqual(["sealingKey"]);
        expect(existsSync(`${RIMWISE_SIGNING_KEYS}.sealing`)).toBe(false);
        for (const shop of shops) {
          expect((await ask(shop, "/v1/events/checkpoints", {})).status).toBe(201);
          shop.process.kill("SIGKILL");
          await exited(shop);
        }
      }
    },
  );

  test.each(["before the database had them", "before the file was cleared"])(
    "goes on when it was killed %s",
    async (moment) => {
      const file = keyFile(earlier);
      const shop = await openShop({ RIMWISE_SIGNING_KEYS: file });
      const { sealingKey } = content(file);
      const half = keyFile({ sealingKey, ...earlier });
      const isBefore = moment.includes("database");
      if (isBefore) await behindTheService(shop, ({ run }) => run("DELETE FROM signing_keys"));
      const again = await secondProcess(shop, { RIMWISE_SIGNING_KEYS: half });
      expect(idsOf(await listed(again))).toEqual([PUBLISHED.kid]);
      expect(content(half)).toEqual({ sealingKey });
    },
  );

  test("has them sealed with the key of the settings when there is one, and the file is gone then", async () => {
    const file = keyFile(earlier);
    const RIMWISE_SEALING_KEY = "5e".repeat(32);
    const shop = await openShop({ RIMWISE_SIGNING_KEYS: file, RIMWISE_SEALING_KEY });
    expect(existsSync(file)).toBe(false);
    expect(idsOf(await listed(await secondProcess(shop, { RIMWISE_SEALING_KEY })))).toEqual([PUBLISHED.kid]);
    const RIMWISE_OTHER = { RIMWISE_SEALING_KEY: "5f".repeat(32) };
    await expect(secondProcess(shop, RIMWISE_OTHER)).rejects.toThrow(
      /^RIMWISE_SEALING_KEY: the signing keys in the database were sealed with another key than this one/,
    );
  });
});

test("a copy of the database opens nothing without what seals the keys", async () => {
  const shop = await openShop();
  const folder = dirname(keyFile());
  const copy = await copyOf(shop, folder);
  expect(await keptKeys({ file: copy })).toEqual(await keptKeys(shop));
  const settings = { RIMWISE_DATABASE: copy, RIMWISE_FIRST_KEY: shop.managerKey };
  await expect(openShop({ ...settings, RIMWISE_SIGNING_KEYS: keyFile() })).rejects.toThrow("is not there");
});
