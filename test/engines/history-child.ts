import { hash } from "node:crypto";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { made } from "../contract/crib.ts";
import { furnish } from "../contract/furnish.ts";
import { keyFile, PUBLISHED } from "../contract/key-file.ts";
import { openShop, type Shop } from "../contract/shop.ts";
import { randomFrom } from "../fuzz/random.ts";
import { requestFrom } from "../fuzz/requests.ts";
import { FUZZ_SETTINGS, REQUESTS_OF_A_SHOP } from "../fuzz/run.ts";
import { nextMoment } from "./seeded-machine.ts";

/**
 * Sends the random requests of seeds to a shop each, on the engine under test, and prints a line for every answer: seed, number,
 * operation, status and a digest of the whole. With `whole` as the last argument, the answers themselves.
 */
const [first = "1", count = "0", form = "digest"] = process.argv.slice(2);

/** Answers that hold times of the true clock, or keys that are made beside the seed. */
const NOT_FROM_THE_SEED = ["getMetrics", "rotateSigningKeys", "compromiseSigningKey"];
/** What a shop on PostgreSQL refuses in other words. */
const OTHERWISE_MEANT = ["createBackup", "listBackups"];
const NOT_COMPARED = ["date", "content-length", "ratelimit"];

for (let sent = 0, seed = Number(first); sent < Number(count); sent += REQUESTS_OF_A_SHOP, seed += 1) {
  await sendTo(seed, Math.min(REQUESTS_OF_A_SHOP, Number(count) - sent));
}

async function sendTo(seed: number, requests: number): Promise<void> {
  const releases: (() => Promise<void>)[] = [];
  nextMoment(seed, 0);
  const signingKeys = keyFile(
    { keys: [{ ...PUBLISHED, createdAt: "2026-03-02T08:00:00.000Z" }] },
    (release) => void releases.push(async () => release()),
  );
  const settings = { ...FUZZ_SETTINGS, RIMWISE_SIGNING_KEYS: signingKeys };
  const shop = await openShop(
    settings,
    () => new Date(),
    (release) => void releases.push(release),
  );
  let number = 0;
  const next = () => {
    number += 1;
    nextMoment(seed, number);
  };
  const furnished = await furnish((path, body, key) => {
    next();
    return made(shop, path, body, key);
  });
  const random = randomFrom(seed);
  for (let asked = 0; asked < requests; asked += 1) {
    const { operation, url, key, headers, body } = requestFrom(random, furnished);
    next();
    if ([...NOT_FROM_THE_SEED, ...OTHERWISE_MEANT].includes(operation.id)) continue;
    const answer = await shop.ask(operation.method, url, {
      key,
      headers,
      ...(body !== undefined && { body }),
    });
    print(`${seed} ${asked} ${operation.id} ${answer.status}`, {
      text: answer.text,
      // In no order of their own: what was sent before has the headers of its request last.
      headers: Object.entries(answer.headers)
        .filter(([name]) => !NOT_COMPARED.includes(name))
        .sort(([one], [other]) => (one < other ? -1 : 1)),
    });
  }
  print(`${seed} history`, await historyOf(shop));
  for (const release of releases.reverse()) await release();
}

/** Every event, with its hash. A manager's key may have been ended: whoever has the store needs none. */
async function historyOf(shop: Shop): Promise<unknown> {
  return behindTheService(shop, ({ rows }) => rows("SELECT sequence, hash FROM events ORDER BY sequence"));
}

function print(name: string, whole: unknown): void {
  const text = JSON.stringify(whole);
  process.stdout.write(`${name} ${form === "whole" ? text : hash("sha256", text).slice(0, 16)}\n`);
}
