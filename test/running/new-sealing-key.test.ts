import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { keptKeys, unsealed } from "../contract/key-file.ts";
import { builtService } from "./built-service.ts";
import {
  ask,
  exited,
  ran,
  run,
  type Settings,
  start,
  temporaryDatabase,
  temporaryFolder,
} from "./service-process.ts";

const FIRST_KEY = "a-first-manager's-key-for-the-tests-0123456789";
const OLD = "5e".repeat(32);
const ROUNDS = Number(process.env["KILL_ROUNDS"] ?? 2);
/** So many that writing one after the other would be cut off amid them. */
const MANY_KEYS = 60;
const KILL_LATER_BY_MS = 4;

let service: readonly string[];
beforeAll(async () => {
  service = [await builtService()];
});

/** A running shop, and what stops it. Its signing keys, all but the current one retired, are sealed with a key of the settings or in a file. */
async function shopWithKeys(where: "setting" | "file", keys = 3) {
  const file = temporaryDatabase();
  const folder = temporaryFolder();
  const settings = {
    RIMWISE_DATABASE: file,
    RIMWISE_SIGNING_KEYS: join(folder, "signing-keys.json"),
    RIMWISE_FIRST_KEY: FIRST_KEY,
    ...(where === "setting" && { RIMWISE_SEALING_KEY: OLD }),
  };
  const shop = await start(service, file, settings);
  for (let turn = 0; turn < keys - 1; turn += 1)
    expect((await ask(shop, "/v1/signing-keys/rotate", {})).status).toBe(200);
  const stop = async () => {
    shop.process.kill("SIGTERM");
    await exited(shop);
  };
  return { file, folder, settings, shop, stop };
}

const sealingKeyIn = (file: string): string => JSON.parse(readFileSync(file, "utf8")).sealingKey;

/** How many of a shop's signing keys a sealing key opens. */
async function openedBy(file: string, sealingKey: string): Promise<number> {
  const keys = await keptKeys({ file });
  return keys.filter(({ kid, x, seal, createdAt, retiredAt }) => {
    try {
      unsealed(sealingKey, seal, { kid, x, createdAt, ...(retiredAt !== null && { retiredAt }) });
      return true;
    } catch {
      return false;
    }
  }).length;
}

const reseal = (settings: Settings, fresh: string) => ran([...service, "new-sealing-key", fresh], settings);

describe("another sealing key", () => {
  test("of the settings opens everything afterwards, the old one nothing, and what was signed is still checked", async () => {
    const { file, folder, settings, shop, stop } = await shopWithKeys("setting");
    expect((await ask(shop, "/v1/events/checkpoints", {})).status).toBe(201);
    const { body: before } = await ask(shop, "/v1/signing-keys");
    await stop();
    const fresh = join(folder, "fresh.json");
    const done = await reseal(settings, fresh);
    expect([done.code, JSON.parse(done.out)]).toEqual([0, { file: fresh, signingKeys: 3 }]);
    expect(done.err).toMatch(/^Set RIMWISE_SEALING_KEY to the sealingKey in .+\. Keep the old key .+\n$/);
    expect([await openedBy(file, OLD), await openedBy(file, sealingKeyIn(fresh))]).toEqual([0, 3]);
    const old = await ran([...service, "serve"], settings);
    expect([old.code, old.err]).toEqual([1, expect.stringMatching(/^RIMWISE_SEALING_KEY: .+another key/)]);
    const again = await start(service, file, { ...settings, RIMWISE_SEALING_KEY: sealingKeyIn(fresh) });
    expect((await ask(again, "/v1/signing-keys")).body).toEqual(before);
    expect((await ask(again, "/v1/events/verify", {})).body).toMatchObject({ isIntact: true });
    const { body: events } = await ask(again, "/v1/events?type=signing-key.resealed");
    expect(events.data).toHaveLength(3);
    expect(JSON.stringify(events.data)).not.toContain('seal"');
    expect((await ask(again, "/v1/signing-keys/rotate", {})).status).toBe(200);
  });

  test("of the file takes the place of the old one by moving it there", async () => {
    const { file, folder, settings, stop } = await shopWithKeys("file");
    await stop();
    const fresh = join(folder, "fresh.json");
    const done = await reseal(settings, fresh);
    expect([done.code, done.err]).toEqual([
      0,
      expect.stringContaining(`Move ${fresh} to ${settings.RIMWISE_SIGNING_KEYS}, for every process`),
    ]);
    renameSync(fresh, settings.RIMWISE_SIGNING_KEYS);
    const again = await start(service, file, settings);
    expect((await ask(again, "/v1/events/checkpoints", {})).status).toBe(201);
  });

  test("run again it says that it was done, and what is to be done next", async () => {
    const { folder, settings, stop } = await shopWithKeys("setting");
    await stop();
    const fresh = join(folder, "fresh.json");
    const first = await reseal(settings, fresh);
    expect(first.code).toBe(0);
    expect(await reseal(settings, fresh)).toEqual(first);
  });

  test("is refused, and nothing changed, while a service runs", async () => {
    const { file, folder, settings } = await shopWithKeys("setting");
    const refused = await reseal(settings, join(folder, "fresh.json"));
    expect([refused.code, refused.err]).toEqual([1, expect.stringMatching(/in use\. Stop .+\n$/)]);
    expect(existsSync(join(folder, "fresh.json"))).toBe(false);
    expect(await openedBy(file, OLD)).toBe(3);
  });

  test("is refused, and nothing changed, when the settings' own opens not all, is gone, or is the same", async () => {
    const { file, folder, settings, stop } = await shopWithKeys("setting");
    await stop();
    const fresh = join(folder, "fresh.json");
    const written = (name: string, text: string, mode = 0o600) => {
      writeFileSync(join(folder, name), text, { mode });
      return join(folder, name);
    };
    const { RIMWISE_SEALING_KEY: _, ...without } = settings;
    const open = written("open.json", JSON.stringify({ sealingKey: "6a".repeat(32) }), 0o644);
    const cases: [Settings, string, RegExp][] = [
      [
        { ...settings, RIMWISE_SEALING_KEY: "5f".repeat(32) },
        fresh,
        /does not open these signing keys: .+, .+, /,
      ],
      [without, fresh, /^Nothing here opens the signing keys: /],
      [
        settings,
        written("same.json", JSON.stringify({ sealingKey: OLD })),
        /holds the key that the service has already/,
      ],
      [
        settings,
        written("notes.txt", "words"),
        /notes\.txt holds no sealing key\. Name a file that is not there/,
      ],
      [settings, open, /^Others than its owner may read .+open\.json \(mode 644\)/],
    ];
    for (const [given, name, sentence] of cases) {
      const refused = await reseal(given, name);
      expect([refused.code, refused.out, refused.err]).toEqual([1, "", expect.stringMatching(sentence)]);
    }
    expect(existsSync(fresh)).toBe(false);
    await behindTheService({ file }, ({ run: change }) =>
      change("UPDATE signing_keys SET created_at = '2020-01-01T00:00:00.000Z' WHERE retired_at IS NULL"),
    );
    const tampered = await reseal(settings, fresh);
    expect([tampered.code, tampered.err]).toEqual([
      1,
      expect.stringMatching(/does not open these signing keys/),
    ]);
    expect(await openedBy(file, OLD)).toBe(2);
  });

  test("is one when several are asked for at once: the others are refused and say why", async () => {
    const { file, folder, settings, stop } = await shopWithKeys("setting");
    await stop();
    const files = ["a", "b", "c"].map((name) => join(folder, `${name}.json`));
    const done = await Promise.all(files.map((fresh) => reseal(settings, fresh)));
    const refused = done.filter(({ code }) => code !== 0);
    expect(refused).toHaveLength(2);
    const why =
      /^(The signing keys were changed meanwhile|The sealing key of the settings does not open|.+in use)/;
    for (const { code, err } of refused) expect([code, err]).toEqual([1, expect.stringMatching(why)]);
    const winner = files[done.findIndex(({ code }) => code === 0)] ?? "";
    expect(await openedBy(file, sealingKeyIn(winner))).toBe(3);
  });

  test("cut off by kill -9 at any moment leaves all under one key, and goes on when it is run again", async () => {
    const { file, folder, settings, stop } = await shopWithKeys("setting", MANY_KEYS);
    await stop();
    let now = OLD;
    for (let round = 0; round < ROUNDS; round += 1) {
      const given = { ...settings, RIMWISE_SEALING_KEY: now };
      const fresh = join(folder, `fresh-${round}.json`);
      const cut = run([...service, "new-sealing-key", fresh], given);
      await expect.poll(() => existsSync(fresh), { timeout: 20_000, interval: 1 }).toBe(true);
      await new Promise((resolve) => setTimeout(resolve, round * KILL_LATER_BY_MS));
      cut.process.kill("SIGKILL");
      await exited(cut);
      const next = sealingKeyIn(fresh);
      const opened = [await openedBy(file, now), await openedBy(file, next)];
      expect([
        [MANY_KEYS, 0],
        [0, MANY_KEYS],
      ]).toContainEqual(opened);
      await expect.poll(async () => (await reseal(given, fresh)).code, { timeout: 20_000 }).toBe(0);
      expect(await openedBy(file, next)).toBe(MANY_KEYS);
      now = next;
    }
    const again = await start(service, file, { ...settings, RIMWISE_SEALING_KEY: now });
    expect((await ask(again, "/v1/events/verify", {})).body).toMatchObject({ isIntact: true });
  });
});
