import { join } from "node:path";
import { buildApp, grantFirstKey, openShopStore, readConfig } from "@rimwise/shop";
import { behindTheService, copyRow, numbersTo } from "../../services/shop/testing/behind-the-service.ts";
import { newSchema } from "../../services/shop/testing/database-under-test.ts";
import { UNLIMITED } from "../running/unlimited.ts";
import { middle } from "./creates.ts";
import { bitAt } from "./shop.ts";

/** Racks of these sizes; the largest takes some minutes to fill. */
const SIZES = [10_000, 100_000, Number(process.env["ENGINE_BITS"] ?? 1_000_000)];
const DIFFERENT_BITS = 500;
const REQUESTS = 40;
/** Each request has a limit of its own, from here on: an answer that was sent before is not searched for again. */
const LEAST_LIMIT = 40;

/** Words that all bits have, many, some and one, sizes, and filters beside them. */
const SEARCHES = [
  "q=3%201/2%20panel",
  "q=half%20inch%20shank%20cove",
  "q=straight%2012%20mm",
  "q=round%20over",
  "q=no77",
  "q=seldom",
  "q=nowhereatall",
  "q=sprial",
  "clearance=table-only",
  "kind=cove&clearance=handheld",
  "diameterMm=25.4&toleranceMm=1",
  "state=held",
  "lacks=mass&kind=panel-raising",
  "q=panel&state=in-rack&shankDiameterMm=12.7",
];

/** What searches take on PostgreSQL in racks of three sizes: the middle of some requests, whole, in one process. */
export async function searchRows(server: string, folder: string): Promise<string[]> {
  const times = new Map<string, number[]>();
  for (const size of SIZES) {
    const rack = await openRack(server, folder, size);
    for (const search of SEARCHES) times.set(search, [...(times.get(search) ?? []), await rack.ask(search)]);
    await rack.close();
  }
  return [
    `Searches on PostgreSQL, ms at ${SIZES.join(", ")} bits, and the last to the first (at most 20 ms at 100,000; at most 2 ×)`,
    ...[...times].map(([search, each]) => {
      const [first = Number.NaN] = each;
      const ratio = (each.at(-1) ?? Number.NaN) / first;
      return `  ${decodeURIComponent(search).padEnd(44)} ${each.map((ms) => ms.toFixed(1).padStart(7)).join("")}   ${ratio.toFixed(2)}`;
    }),
  ];
}

async function openRack(server: string, folder: string, size: number) {
  const database = newSchema(server, "pool_size=4");
  const store = await openShopStore(database);
  const key = (await grantFirstKey(store, undefined)) ?? "";
  const config = readConfig({
    RIMWISE_DATABASE: database,
    RIMWISE_SIGNING_KEYS: join(folder, `keys-${size}.json`),
    ...UNLIMITED,
  });
  const { app } = await buildApp({ config, store });
  const headers = { authorization: `Bearer ${key}` };
  for (let index = 0; index < DIFFERENT_BITS; index += 1) {
    const payload = { name: `Bit ${index} panel`, ...bitAt(index) };
    const { statusCode, body } = await app.inject({ method: "POST", url: "/v1/bits", headers, payload });
    if (statusCode !== 201) throw new Error(body);
  }
  await behindTheService({ file: database }, async (behind) => {
    const originals = await behind.rows("SELECT id FROM bits ORDER BY number");
    const copies = Math.round(size / DIFFERENT_BITS) - 1;
    for (const [index, { id }] of originals.entries()) {
      // One copy of each has a number of its own, and one in ten thousand of all a word that is seldom.
      const words = `original.words || ' no' || (n * ${DIFFERENT_BITS} + ${index}) || CASE WHEN (n * ${DIFFERENT_BITS} + ${index}) % 10000 = 77 THEN ' seldom' ELSE '' END`;
      const from = numbersTo(copies);
      await copyRow(behind, "bits", String(id), { id: `original.id || '_' || n`, words }, { from });
    }
    // As the server does by itself some time after a rack was filled.
    await behind.run("VACUUM ANALYZE bits");
  });
  return {
    ask: async (search: string) => {
      const times: number[] = [];
      for (let request = 0; request < REQUESTS; request += 1) {
        const started = performance.now();
        const url = `/v1/bits?${search}&limit=${LEAST_LIMIT + request}`;
        const { statusCode, body } = await app.inject({ url, headers });
        times.push(performance.now() - started);
        if (statusCode !== 200) throw new Error(`${search}: ${body}`);
      }
      return middle(times);
    },
    close: async () => {
      await app.close();
      await store.close();
    },
  };
}
