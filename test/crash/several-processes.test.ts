import { setTimeout as wait } from "node:timers/promises";
import { expect, onTestFinished, test } from "vitest";
import { count } from "../../services/shop/testing/behind-the-service.ts";
import { serverUnderTest } from "../../services/shop/testing/database-under-test.ts";
import { expectWhole } from "../../services/shop/testing/whole.ts";
import { builtService } from "../running/built-service.ts";
import { ask, exited, type Running, start, temporaryDatabase } from "../running/service-process.ts";
import { BIT } from "./bit.ts";
import { follow } from "./followers.ts";

/** `pnpm processes` goes on for two minutes, and kills as seldom as somebody would who watches. */
const SECONDS = Number(process.env["STRESS_SECONDS"] ?? 6);
const KILLED_EVERY_MS = SECONDS > 60 ? 3000 : 1500;
/** One SQLite file has one machine, and a writer at a time. */
const PROCESSES = serverUnderTest() === undefined ? 2 : 4;
const WRITERS = 8;
const FOLLOWERS = 3;
/** Until a follower that was cut off has found another process and caught up, ms. */
const CAUGHT_UP_WITHIN_MS = 30_000;

test("processes of one shop, one after the other killed under load, lose nothing acknowledged and tell everything once", {
  timeout: 120_000 + SECONDS * 2000,
}, async () => {
  const database = temporaryDatabase();
  const built = [await builtService()];
  const first = await start(built, database);
  const { key } = first;
  const settings = { RIMWISE_FIRST_KEY: key };
  const others = Array.from({ length: PROCESSES - 1 }, () => start(built, database, settings));
  const running: Running[] = [first, ...(await Promise.all(others))];
  let turn = 0;
  const nextUrl = () => {
    turn += 1;
    return running[turn % running.length]?.url ?? first.url;
  };
  const followers = Array.from({ length: FOLLOWERS }, () => follow(nextUrl, key));
  onTestFinished(() => {
    for (const { leave } of followers) leave();
  });

  const acknowledged = new Map<string, string>();
  const unforeseen = new Set<string>();
  let isOver = false;
  async function write(writer: number): Promise<void> {
    for (let number = 0; !isOver; number += 1) {
      const idempotencyKey = `${writer}-${number}`;
      const id = await createOnce(nextUrl, key, idempotencyKey, unforeseen);
      acknowledged.set(idempotencyKey, id);
    }
  }
  const writers = Array.from({ length: WRITERS }, (_, writer) => write(writer));

  let kills = 0;
  for (const endsAt = Date.now() + SECONDS * 1000; kills < 2 || Date.now() < endsAt; kills += 1) {
    await wait(KILLED_EVERY_MS);
    const place = kills % running.length;
    const victim = running[place];
    victim?.process.kill("SIGKILL");
    if (victim !== undefined) await exited(victim);
    running[place] = await start(built, database, settings);
  }
  isOver = true;
  await Promise.all(writers);

  expect(kills).toBeGreaterThanOrEqual(2);
  expect([...unforeseen], "answers that nobody should get").toEqual([]);
  expect(acknowledged.size).toBeGreaterThan(100);
  expect(new Set(acknowledged.values()).size, "each request made a bit of its own").toBe(acknowledged.size);
  const [shop] = running;
  if (shop === undefined) throw new Error("nothing runs");
  const shopFile = { file: database };
  expect(await count(shopFile, "bits")).toBe(acknowledged.size);
  const { body: proof } = await ask(shop, "/v1/events/verify", {});
  expect(proof).toMatchObject({ isIntact: true, nextSequence: null });
  const all = Array.from({ length: await count(shopFile, "events") }, (_, index) => index + 1);
  for (const { heard } of followers) {
    await expect
      .poll(() => heard().length, { timeout: CAUGHT_UP_WITHIN_MS })
      .toBeGreaterThanOrEqual(all.length);
    expect(heard()).toEqual(all);
  }
  await expectWhole(database);
});

/** Asks one process after the other until one has answered; gives the id of the bit. */
async function createOnce(
  nextUrl: () => string,
  key: string,
  idempotencyKey: string,
  unforeseen: Set<string>,
): Promise<string> {
  for (;;) {
    const response = await fetch(`${nextUrl()}/v1/bits`, {
      method: "POST",
      headers: {
        authorization: `Bearer ${key}`,
        "content-type": "application/json",
        "idempotency-key": idempotencyKey,
      },
      body: JSON.stringify(BIT),
    }).catch(() => undefined);
    if (response?.status === 201) {
      const body = await response.json().catch(() => undefined);
      if (body !== undefined) return String(Reflect.get(Object(body), "id"));
    } else if (response !== undefined && response.status !== 503) {
      const text = await response.text().catch(() => "");
      if (!text.includes("idempotency-in-progress")) unforeseen.add(`${response.status} ${text}`);
    }
    await wait(10);
  }
}
