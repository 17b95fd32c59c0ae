import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildApp, grantFirstKey, openShopStore, readConfig } from "@rimwise/shop";
import { newSchema } from "../../services/shop/testing/database-under-test.ts";
import { injected } from "../../services/shop/testing/injected.ts";
import { processorSecondsOf, startServer } from "../postgresql/server.ts";
import { UNLIMITED } from "../running/unlimited.ts";
import { lapseMs } from "./approvals.ts";
import { createsPerSecond, middle } from "./creates.ts";
import { searchRows } from "./engine-searches.ts";
import { bitAt } from "./shop.ts";
import { twoProcessRows } from "./two-processes.ts";

/** Turns that alternate between the engines: a machine that slows down for a while slows both down. */
const TURNS = 5;
const MANY_CLIENTS = 64;
const AT_ONCE = 16;
const READS = 3000;
const LAPSING = 1000;

type Shop = Awaited<ReturnType<typeof openShop>>;
type Engines<Value> = { readonly sqlite: Value; readonly postgresql: Value };

/**
 * PostgreSQL beside SQLite in one run, both flushing to the same disk, the service with its database together: creates over HTTP,
 * reads by id, a change that ends many settings, reads from two processes of one shop, and searches in small and large racks.
 */
export async function benchEngines(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-bench-"));
  const server = startServer({ parent: tmpdir() });
  try {
    const shops = {
      sqlite: await openShop(join(folder, "shop.sqlite"), folder),
      postgresql: await openShop(newSchema(server.url, "pool_size=10"), folder),
    };
    const rows = [
      await compared("creates a second, 64 clients", "at least 0.6", shops, ({ url, headers }) =>
        createsPerSecond(`${url}/v1/bits`, headers, MANY_CLIENTS),
      ),
      await compared("creates a second, 1 client", "at least 0.4", shops, ({ url, headers }) =>
        createsPerSecond(`${url}/v1/bits`, headers, 1),
      ),
      await compared("processor µs for a GET by id", "at most 3", shops, (shop) =>
        readMicroseconds(shop, () => processorSecondsOf(server)),
      ),
    ];
    await shops.sqlite.close();
    await shops.postgresql.close();
    for (const isOnePlan of [true, false]) {
      const [own, other] = [
        await lapseMs(LAPSING, isOnePlan),
        await lapseMs(LAPSING, isOnePlan, newSchema(server.url)),
      ];
      const name = `ms for ${LAPSING} lapses, ${isOnePlan ? "one plan" : "as many plans"}`;
      rows.push(row(name, "at most 4", { sqlite: own, postgresql: other }, [other / own]));
    }
    return [
      "PostgreSQL beside SQLite, in turns in one run (ratio PostgreSQL / SQLite, the middle and from to)",
      ...rows,
      ...(await twoProcessRows(server, folder)),
      ...(await searchRows(server.url, folder)),
    ].join("\n");
  } finally {
    server.stop();
    rmSync(folder, { recursive: true });
  }
}

async function compared(
  name: string,
  bar: string,
  shops: Engines<Shop>,
  measure: (shop: Shop) => Promise<number>,
): Promise<string> {
  const turns: Engines<number>[] = [];
  for (let turn = 0; turn <= TURNS; turn += 1) {
    const measured = { sqlite: await measure(shops.sqlite), postgresql: await measure(shops.postgresql) };
    // The first turn warms up.
    if (turn > 0) turns.push(measured);
  }
  const both = {
    sqlite: middle(turns.map(({ sqlite }) => sqlite)),
    postgresql: middle(turns.map(({ postgresql }) => postgresql)),
  };
  return row(
    name,
    bar,
    both,
    turns.map(({ sqlite, postgresql }) => postgresql / sqlite),
  );
}

function row(name: string, bar: string, { sqlite, postgresql }: Engines<number>, ratios: number[]): string {
  const shown = (value: number) => value.toFixed(0).padStart(6);
  const range =
    ratios.length < 2 ? "" : `, ${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)}`;
  return `  ${name.padEnd(36)} ${shown(sqlite)} ${shown(postgresql)}   ${middle(ratios).toFixed(2)}${range} (${bar})`;
}

async function openShop(database: string, folder: string) {
  const config = readConfig({
    RIMWISE_DATABASE: database,
    RIMWISE_SIGNING_KEYS: join(folder, `${database.startsWith("postgresql") ? "other-" : ""}keys.json`),
    ...UNLIMITED,
  });
  const store = await openShopStore(database);
  const key = (await grantFirstKey(store, undefined)) ?? "";
  const { app } = await buildApp({ config, store });
  const url = await app.listen({ port: 0, host: "127.0.0.1" });
  const headers = { authorization: `Bearer ${key}`, "content-type": "application/json" };
  const made = await app.inject({
    method: "POST",
    url: "/v1/bits",
    headers,
    payload: { name: "Straight", ...bitAt(0) },
  });
  const close = async () => {
    await app.close();
    await store.close();
  };
  return { app, url, headers, path: `/v1/bits/${made.json().id}`, close };
}

/** Processor time of a read, of the service and of the database, with some asked at once. */
async function readMicroseconds({ app, path, headers }: Shop, ofServer: () => number): Promise<number> {
  const before = process.cpuUsage();
  const serverBefore = ofServer();
  for (let done = 0; done < READS; done += AT_ONCE) {
    const answers = await Promise.all(
      Array.from({ length: AT_ONCE }, () => injected(app, { url: path, headers })),
    );
    if (answers.some(({ statusCode }) => statusCode !== 200)) throw new Error(`${path} was refused`);
  }
  const { user, system } = process.cpuUsage(before);
  return (user + system + (ofServer() - serverBefore) * 1e6) / READS;
}
