import { copyFileSync, readdirSync } from "node:fs";
import { setTimeout as sleep } from "node:timers/promises";
import Database from "better-sqlite3";
import { beforeAll, expect, test } from "vitest";
import { describeOnSqlite } from "../../services/shop/testing/one-engine.ts";
import { builtService } from "../running/built-service.ts";
import {
  ask,
  exited,
  freePort,
  type Running,
  ran,
  run,
  start,
  temporaryFile,
} from "../running/service-process.ts";
import { firstReleaseFile, PASSPHRASE } from "../upgrades/first-release-file.ts";

/** Enough that the migration and what follows it take longer than the start of the process. */
const BITS = 1500;
/** `pnpm faults` tries many more times. */
const ROUNDS = Number(process.env["KILL_ROUNDS"] ?? 3);

const MIGRATIONS = readdirSync(new URL("../../migrations/sqlite/", import.meta.url)).filter((name) =>
  name.endsWith(".sql"),
).length;

let service: readonly string[];
beforeAll(async () => {
  service = [await builtService()];
});

describeOnSqlite("no release before had another database", () => {
  test("a process that is killed while it migrates leaves the old shop or the new one, and the next start finishes", {
    timeout: 60_000 + ROUNDS * 20_000,
  }, async () => {
    const old = firstReleaseFile(BITS);
    const wholeStartMs = await startMs(copyOf(old));
    for (let round = 1; round <= ROUNDS; round += 1) {
      const file = copyOf(old);
      const killed = run(service, { RIMWISE_DATABASE: file, RIMWISE_PORT: String(await freePort()) });
      await sleep((wholeStartMs * round) / (ROUNDS + 1));
      killed.process.kill("SIGKILL");
      await exited(killed);

      const database = new Database(file);
      expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
      expect(database.prepare("SELECT count(*) FROM bits").pluck().get()).toBe(BITS);
      const applied = database.prepare("SELECT count(*) FROM migrations").pluck().get();
      database.close();
      expect([1, MIGRATIONS], "the first release's migration or all, never some").toContain(applied);

      const again = await startOld(file);
      expect((await ask(again, `/v1/bits/bit_${BITS}`)).status).toBe(200);
      expect((await ask(again, "/v1/bits?limit=1&q=panel")).body.data).toHaveLength(1);
      again.process.kill("SIGTERM");
      expect(await exited(again)).toBe(0);
      const verified = await ran([...service, "verify"], { RIMWISE_DATABASE: file });
      expect([verified.code, verified.err]).toEqual([0, ""]);
    }
  });
});

function copyOf(old: string): string {
  const file = temporaryFile();
  copyFileSync(old, file);
  return file;
}

/** From the start of the process until it is ready, unkilled. */
async function startMs(file: string): Promise<number> {
  const before = performance.now();
  const shop = await startOld(file);
  const took = performance.now() - before;
  shop.process.kill("SIGTERM");
  await exited(shop);
  return took;
}

/** Starts on a shop that has a key already. */
async function startOld(file: string): Promise<Running> {
  const shop = await start(service, file, { RIMWISE_FIRST_KEY: "a-first-key-that-no-old-shop-needs" });
  return { ...shop, key: PASSPHRASE };
}
