import { once } from "node:events";
import { type IncomingMessage, request } from "node:http";
import { Readable } from "node:stream";
import { text } from "node:stream/consumers";
import { pipeline } from "node:stream/promises";
import { buildApp, grantFirstKey, openShopStore, readConfig } from "@rimwise/shop";

/**
 * Imports as many rows as asked into a new shop and prints what memory that took, bytes: the live heap at its most,
 * looked at all the way, and what the process as a whole grew by. Run with --expose-gc.
 */
const [file = "", mode = "", rows = "0"] = process.argv.slice(2);
const LOOK_EVERY_MS = 500;
const WARM_UP_ROWS = 500;
const BYTES_PER_KIB = 1024;

void measure();

async function measure(): Promise<void> {
  const store = await openShopStore(file);
  const config = readConfig({ RIMWISE_LOG_LEVEL: "silent", RIMWISE_BUSY_AFTER_MS: "0" });
  const { app } = await buildApp({ config, store });
  const url = await app.listen({ port: 0 });
  const key = (await grantFirstKey(store, undefined)) ?? "";

  // Compiled code, prepared statements and caches are there after the first file.
  await importRows(WARM_UP_ROWS, "Warm");
  const wholeBefore = mostHeldBytes();
  let live = liveBytes();
  const looking = setInterval(() => {
    live = Math.max(live, liveBytes());
  }, LOOK_EVERY_MS);
  const { created } = await importRows(Number(rows), "Straight");
  clearInterval(looking);
  await app.close();
  await store.close();
  process.stdout.write(JSON.stringify({ created, live, wholeGrowth: mostHeldBytes() - wholeBefore }));

  /** The rows are made as they are sent, so that the file itself is nowhere in memory. */
  async function importRows(count: number, name: string): Promise<{ created: number }> {
    const headers = { authorization: `Bearer ${key}`, "content-type": "text/csv" };
    const sending = request(`${url}/v1/bits/import?mode=${mode}`, { method: "POST", headers });
    const answered: Promise<IncomingMessage[]> = once(sending, "response");
    await pipeline(Readable.from(linesOf(count, name)), sending);
    const [answer] = await answered;
    return JSON.parse(answer === undefined ? "{}" : await text(answer));
  }
}

function* linesOf(count: number, name: string): Generator<string> {
  yield "name,kind,diameterMm,cuttingLengthMm,shankDiameterMm,wings,notes\n";
  for (let index = 0; index < count; index += 1) {
    yield `${name} ${index},straight,${6 + (index % 50) / 2},30,12.7,2,"Drawer ${index % 40}"\n`;
  }
}

function liveBytes(): number {
  globalThis.gc?.();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

/** The most that the process has ever held, as the kernel sees it. */
function mostHeldBytes(): number {
  return process.resourceUsage().maxRSS * BYTES_PER_KIB;
}
