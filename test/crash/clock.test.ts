import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, expect, test } from "vitest";
import { builtService } from "../running/built-service.ts";
import {
  ask,
  exited,
  type Running,
  start,
  temporaryDatabase,
  temporaryFolder,
} from "../running/service-process.ts";
import { BIT } from "./bit.ts";

const SETTABLE_CLOCK = fileURLToPath(new URL("../running/set-clock.ts", import.meta.url));
const DAY_MS = 86_400_000;
/** Back a day, on two years, back to now. */
const JUMPS_MS = [-DAY_MS, 730 * DAY_MS, 0];

let service: readonly string[];
beforeAll(async () => {
  service = [await builtService()];
});

/** A service whose clock can be set. */
async function startWithClock(database: string, settings = {}) {
  const clock = join(temporaryFolder(), "clock");
  const program = ["--import", "tsx", "--import", SETTABLE_CLOCK, ...service];
  const shop = await start(program, database, { CLOCK_FILE: clock, ...settings });
  return { ...shop, clock };
}

async function setClock(shop: Running & { readonly clock: string }, aheadMs: number): Promise<void> {
  writeFileSync(shop.clock, String(aheadMs));
  shop.process.kill("SIGWINCH");
  await expect.poll(shop.err).toMatch(new RegExp(`clock ${aheadMs}\n$`));
}

test("a clock that jumps back a day and on two years loses nothing and leaves the history whole", {
  timeout: 60_000,
}, async () => {
  const database = temporaryDatabase();
  const shop = await startWithClock(database);
  const created: string[] = [];
  const createTen = async () => {
    for (let count = 0; count < 10; count += 1) {
      const { status, body } = await ask(shop, "/v1/bits", BIT);
      expect(status).toBe(201);
      created.push(body.id);
    }
  };
  await createTen();
  for (const aheadMs of JUMPS_MS) {
    await setClock(shop, aheadMs);
    const [, year] = /^(\d{4})/.exec((await ask(shop, "/v1/bits", BIT)).body.createdAt) ?? [];
    expect(Number(year)).toBe(new Date(Date.now() + aheadMs).getUTCFullYear());
    await createTen();
  }
  const { body: events } = await ask(shop, "/v1/events?limit=200");
  const sequences: number[] = events.data.map(({ sequence }: { sequence: number }) => sequence);
  expect(sequences).toEqual([...sequences].sort((one, other) => one - other));
  expect(new Set(created).size).toBe(40);
  shop.process.kill("SIGTERM");
  await exited(shop);

  const again = await start(service, database);
  for (const id of created) expect((await ask(again, `/v1/bits/${id}`)).status).toBe(200);
  expect((await ask(again, "/v1/events/verify", {})).body).toMatchObject({
    isIntact: true,
    nextSequence: null,
  });
});

test("a caller who asked too often waits a minute, and not the day that the clock went back", {
  timeout: 60_000,
}, async () => {
  const database = temporaryDatabase();
  const shop = await startWithClock(database, { RIMWISE_RATE_LIMIT_PER_MINUTE: "5" });
  const answer = () => fetch(`${shop.url}/v1/me`, { headers: { authorization: `Bearer ${shop.key}` } });
  for (let count = 0; count < 6; count += 1) await answer();
  await setClock(shop, -DAY_MS);
  const refused = await answer();
  expect(refused.status).toBe(429);
  expect(Number(refused.headers.get("retry-after"))).toBeLessThanOrEqual(60);
});
