import { rmSync } from "node:fs";
import { buildApp, grantFirstKey, openStore, readConfig } from "@rimwise/shop";

/**
 * Imports as many rows as it is told into a shop of its own and prints what memory that took, bytes: live heap over what was
 * live before, looked at all the way, and the growth of the process as a whole. Run with --expose-gc.
 */
const [file = "", mode = "", rows = "0"] = process.argv.slice(2);
const LOOK_EVERY_MS = 250;
const WARM_UP_ROWS = 200;

const store = openStore(file);
const config = readConfig({ RIMWISE_LOG_LEVEL: "silent", RIMWISE_BUSY_AFTER_MS: "0" });
const { app } = await buildApp({ config, store });
const url = await app.listen({ port: 0 });
const key = (await grantFirstKey(store, undefined)) ?? "";

// Compiled code, prepared statements and caches are there after the first file.
await importRows(WARM_UP_ROWS, "warm");
const heapBefore = liveBytes();
const wholeBefore = wholeBytes();
let heapMost = heapBefore;
let k = 0; const v8 = await import("node:v8"); const looking = setInterval(() => { k++; if (k === 4) v8.writeHeapSnapshot("/tmp/zz/a.heapsnapshot"); if (k === 16) v8.writeHeapSnapshot("/tmp/zz/b.heapsnapshot");
  heapMost = Math.max(heapMost, liveBytes());
}, LOOK_EVERY_MS);
const { created }: { created: number } = await (await importRows(Number(rows), "many")).json();
clearInterval(looking); await new Promise((r) => setTimeout(r, 500)); process.stderr.write(`after ${liveBytes() - heapBefore} ${process.memoryUsage().external}\n`);
await app.close();
store.close();
rmSync(file);
process.stdout.write(
  JSON.stringify({ created, heapGrowth: heapMost - heapBefore, wholeGrowth: wholeBytes() - wholeBefore }),
);

function importRows(count: number, name: string): Promise<Response> {
  const request = {
    method: "POST",
    headers: { authorization: `Bearer ${key}`, "content-type": "text/csv" },
    body: ReadableStream.from(linesOf(count, name)),
    duplex: "half",
  };
  return fetch(`${url}/v1/bits/import?mode=${mode}`, request);
}

/** Made as they are sent, so that the file itself is nowhere in memory. */
function* linesOf(count: number, name: string) {
  const encoder = new TextEncoder();
  yield encoder.encode("name,kind,diameterMm,cuttingLengthMm,shankDiameterMm,wings,notes\n");
  for (let index = 0; index < count; index += 1) {
    yield encoder.encode(`${name} ${index},straight,${6 + (index % 50) / 2},30,12.7,2,"Drawer ${index % 40}"\n`);
  }
}

function liveBytes(): number {
  globalThis.gc?.();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

/** The most that the process has ever held, kernel's view. */
function wholeBytes(): number {
  return process.resourceUsage().maxRSS * 1024;
}
