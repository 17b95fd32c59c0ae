import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setImmediate as nextTurn } from "node:timers/promises";
import {
  type ApiDocument,
  type App,
  buildApp,
  grantFirstKey,
  openShopStore,
  readConfig,
} from "@rimwise/shop";
import { furnish } from "../contract/furnish.ts";
import { UNLIMITED } from "../running/unlimited.ts";
import { type Counts, countsFor, fillShop } from "./large-shop.ts";
import { type ReadRow, readRows } from "./read-requests.ts";
import { bitAt } from "./shop.ts";

const SMALL = 10_000;
const LARGE = 1_000_000;
const DIFFERENT_BITS = 500;
const REQUESTS = 200;
/** A ratio over this is marked. */
const NOTABLE = 1.5;

type OpenShop = {
  readonly app: App;
  readonly key: string;
  readonly counts: Counts;
  readonly close: () => Promise<void>;
};
type Measured = {
  readonly name: string;
  readonly smallUs: number;
  readonly largeUs: number;
  readonly ratio: number;
};

/** What every read costs in a shop of a million bits beside one of ten thousand, request by request in turn, at the median. */
export async function benchReads(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-bench-"));
  try {
    const template = join(folder, "template.sqlite");
    const rows = readRows(await makeTemplate(template));
    // A parameter without a sample is found before the minutes that filling takes.
    for (const { urlFor } of rows) urlFor(countsFor(SMALL), 0);
    const small = await openFilled(join(folder, "small.sqlite"), template, countsFor(SMALL));
    const large = await openFilled(join(folder, "large.sqlite"), template, countsFor(LARGE));
    const results: Measured[] = [];
    for (const row of rows) results.push(await measured(row, small, large));
    await small.close();
    await large.close();
    return table(results);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function table(rows: readonly Measured[]): string {
  // Two filters at once are measured too, and shown if they cost more.
  const shown = rows.filter(({ name, ratio }) => !name.includes("&") || ratio > NOTABLE);
  const width = Math.max(...shown.map(({ name }) => name.length));
  const us = (value: number) => value.toFixed(0).padStart(7);
  return [
    `Every read at ${LARGE} bits beside ${SMALL} (median of ${REQUESTS} requests each, in turn, in one process)`,
    ...shown.map(
      ({ name, smallUs, largeUs, ratio }) =>
        `  ${name.padEnd(width)} ${us(smallUs)} µs ${us(largeUs)} µs   ${ratio.toFixed(2)}${ratio > NOTABLE ? "  <<" : ""}`,
    ),
    `  ${rows.length - shown.length} more with two filters at once: each at most ${NOTABLE} times`,
  ].join("\n");
}

async function measured({ name, urlFor }: ReadRow, small: OpenShop, large: OpenShop): Promise<Measured> {
  const times = { small: [] as number[], large: [] as number[] };
  // Asked twice: the first round brings what is asked for from the disk.
  for (const isWarm of [false, true]) {
    for (let turn = 0; turn < REQUESTS; turn += 1) {
      const one = await timed(small, urlFor(small.counts, turn));
      const other = await timed(large, urlFor(large.counts, turn));
      if (!isWarm) continue;
      times.small.push(one);
      times.large.push(other);
    }
  }
  const [smallUs, largeUs] = [median(times.small), median(times.large)];
  return { name, smallUs, largeUs, ratio: largeUs / smallUs };
}

async function timed({ app, key }: OpenShop, url: string): Promise<number> {
  const headers = { authorization: `Bearer ${key}` };
  // What the last request put off is done first, as it would be over a connection; else it is kept for hours.
  await nextTurn();
  const started = process.hrtime.bigint();
  const { statusCode, body } = await app.inject({ url, headers });
  const took = Number(process.hrtime.bigint() - started) / 1000;
  // An import that was never made is looked up like any other.
  if (statusCode !== 200 && !url.endsWith("import_none")) throw new Error(`${url} ${statusCode} ${body}`);
  return took;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

/** A small shop made through the API, with one of everything and many different bits. Returns the API description. */
async function makeTemplate(file: string): Promise<ApiDocument> {
  const { app, key, document, close } = await shopOn(file);
  const post = async (url: string, payload: object, by = key) => {
    const headers = { authorization: `Bearer ${by}` };
    const answer = await app.inject({ method: "POST", url, payload, headers });
    if (answer.statusCode >= 300) throw new Error(`${url} ${answer.body}`);
    return answer.json();
  };
  await furnish(post);
  for (let index = 1; index < DIFFERENT_BITS; index += 1) {
    await post("/v1/bits", { name: `Bit ${index}`, ...bitAt(index) });
  }
  await close();
  return document();
}

async function openFilled(file: string, template: string, counts: Counts): Promise<OpenShop> {
  const empty = await shopOn(file);
  await empty.close();
  fillShop(file, template, counts);
  return { ...(await shopOn(file, empty.key)), counts };
}

async function shopOn(file: string, known?: string) {
  const config = readConfig({
    RIMWISE_DATABASE: file,
    ...UNLIMITED,
  });
  const store = await openShopStore(file);
  const key = known ?? (await grantFirstKey(store, undefined)) ?? "";
  const { app, document } = await buildApp({ config, store });
  await app.ready();
  const close = async () => {
    await app.close();
    await store.close();
  };
  return { app, key, document, close };
}
