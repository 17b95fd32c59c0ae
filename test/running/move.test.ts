import { existsSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { beforeAll, describe, expect, test } from "vitest";
import { openSqlite } from "../../services/shop/testing/behind-sqlite.ts";
import { count, newDatabase, openDatabase } from "../../services/shop/testing/behind-the-service.ts";
import { serverUnderTest } from "../../services/shop/testing/database-under-test.ts";
import { furnish } from "../contract/furnish.ts";
import { builtService } from "./built-service.ts";
import { exited, type Running, ran, run, type Settings, start, temporaryFolder } from "./service-process.ts";

const FIRST_KEY = "a-first-manager's-key-for-the-tests-0123456789";

let service: readonly string[];
beforeAll(async () => {
  service = [await builtService()];
});

/** Where a shop can be moved to and fro: between a file and, on the server under test, a schema; or else between two files. */
function places() {
  const folder = temporaryFolder();
  const settings: Settings = {
    RIMWISE_SIGNING_KEYS: join(folder, "signing-keys.json"),
    RIMWISE_FIRST_KEY: FIRST_KEY,
  };
  const elsewhere = serverUnderTest() === undefined ? join(folder, "elsewhere.sqlite") : newDatabase(folder);
  const move = (from: string, to: string) => ran([...service, "move", from, to], settings);
  return {
    folder,
    settings,
    first: join(folder, "first.sqlite"),
    elsewhere,
    back: join(folder, "back.sqlite"),
    move,
  };
}

async function post({ url, key }: Running, path: string, body: object | string, asKey = key) {
  const isFile = typeof body === "string";
  const answer = await fetch(`${url}${path}`, {
    method: "POST",
    headers: {
      authorization: `Bearer ${asKey}`,
      "content-type": isFile ? "application/x-ndjson" : "application/json",
    },
    body: isFile ? body : JSON.stringify(body),
  });
  const text = await answer.text();
  expect(answer.status, `${path}: ${text.slice(0, 500)}`).toBeLessThan(300);
  return text === "" ? undefined : JSON.parse(text);
}

const ended = async (shop: Running) => {
  shop.process.kill("SIGTERM");
  expect(await exited(shop)).toBe(0);
};

/** Everything in a file as text: every table with its rows as SQLite has them, but what belongs to one database alone. */
async function dumpOf(file: string): Promise<string> {
  const database = openSqlite(file);
  const lines: string[] = [];
  for (const table of [...(await database.tables())].sort()) {
    if (["migrations", "leases"].includes(table)) continue;
    const rows = await database.rows(`SELECT * FROM "${table}"`);
    lines.push(
      table,
      ...rows.map((row) => JSON.stringify(Object.entries(row).sort(([a], [b]) => (a < b ? -1 : 1)))).sort(),
    );
  }
  await database.close();
  return lines.join("\n");
}

describe("a shop moved from one database into another", () => {
  test("is there as it was, and moved back it is the same value for value, its history verified each time", async () => {
    const { settings, first, elsewhere, back, move } = places();
    const shop = await start(service, first, settings);
    const { keys } = await furnish((path, body, key) => post(shop, path, body, key));
    const rows = Array.from({ length: 700 }, (_, index) =>
      JSON.stringify({
        name: `Straight “${index}” – ${"é".repeat(index % 7)}`,
        form: { kind: "straight", diameterMm: 6 + index / 70, cuttingLengthMm: 25 },
        ...{ shankDiameterMm: 12.7, wings: 2 },
      }),
    );
    await post(shop, "/v1/bits/import", `${rows.join("\n")}\n`);
    await post(shop, "/v1/signing-keys/rotate", {});
    await ended(shop);
    const dump = await dumpOf(first);

    const there = await move(first, elsewhere);
    expect([there.code, there.err]).toEqual([0, ""]);
    const { digest, proof } = JSON.parse(there.out);
    expect(proof).toMatchObject({ isIntact: true, checkpoints: 2 });
    const returned = await move(elsewhere, back);
    expect([returned.code, returned.err]).toEqual([0, ""]);
    expect(JSON.parse(returned.out)).toMatchObject({ digest, proof });
    expect((await dumpOf(back)) === dump, "the dumps are the same, byte for byte").toBe(true);

    const again = await start(service, elsewhere, settings);
    await post(again, "/v1/bits", JSON.parse(rows[0] ?? ""));
    const found = await fetch(`${again.url}/v1/bits?q=straight&limit=1`, {
      headers: { authorization: `Bearer ${keys.instructor}` },
    });
    expect((await found.json()).data).toHaveLength(1);
    await post(again, "/v1/events/checkpoints", {});
  });

  test("goes on where it was killed, and no service opens what is half there", async () => {
    const { settings, first, elsewhere, move } = places();
    const shop = await start(service, first, settings);
    const rows = Array.from({ length: 6000 }, (_, index) =>
      JSON.stringify({
        name: `Straight ${index}`,
        form: { kind: "straight", diameterMm: 12, cuttingLengthMm: 25 },
        ...{ shankDiameterMm: 12.7, wings: 2 },
      }),
    );
    await post(shop, "/v1/bits/import", `${rows.join("\n")}\n`);
    await ended(shop);
    const moving = run([...service, "move", first, elsewhere], settings);
    const copied = () => countIn(elsewhere, "bits");
    while ((await copied()) === 0 && moving.process.exitCode === null) await wait(5);
    moving.process.kill("SIGKILL");
    await exited(moving);
    const half = await copied();
    expect(half).toBeGreaterThan(0);
    expect((await countIn(elsewhere, "events")) < 6002, "the kill came amid the move").toBe(true);
    const refused = await ran([...service], { ...settings, RIMWISE_DATABASE: elsewhere });
    expect([refused.code, refused.err]).toEqual([
      1,
      expect.stringMatching(/has not come to its end\. Run the same move again/),
    ]);
    const again = await move(first, elsewhere);
    expect([again.code, again.err]).toEqual([0, ""]);
    expect(await copied()).toBe(6000);
    const second = await move(first, elsewhere);
    expect([second.code, second.err]).toEqual([1, expect.stringMatching(/is not empty\. Name a new/)]);
  });

  test("must not be in use, and what is there already is not written over", async () => {
    const { folder, settings, first, elsewhere, back, move } = places();
    const shop = await start(service, first, settings);
    const inUse = await move(first, elsewhere);
    expect([inUse.code, inUse.err]).toEqual([1, expect.stringMatching(/is in use\. Stop the service first/)]);
    await ended(shop);
    expect((await move(first, elsewhere)).code).toBe(0);
    const other = await start(service, elsewhere, settings);
    const onto = await move(elsewhere, back);
    expect([onto.code, onto.err]).toEqual([
      1,
      expect.stringMatching(/is in use\. Stop (the service|its services) first/),
    ]);
    expect(existsSync(back)).toBe(false);
    await ended(other);
    const full = await move(elsewhere, first);
    expect([full.code, full.err]).toEqual([1, expect.stringMatching(/is not empty\. Name a new file/)]);
    const nowhere = await move(join(folder, "nowhere.sqlite"), back);
    expect([nowhere.code, nowhere.err]).toEqual([1, expect.stringMatching(/there is no database at/)]);
  });
});

async function countIn(database: string, table: string): Promise<number> {
  const file = { file: database };
  if (serverUnderTest() === undefined && !existsSync(database)) return 0;
  const opened = await openDatabase(database);
  const has = (await opened.tables()).includes(table);
  await opened.close();
  return has ? count(file, table) : 0;
}
