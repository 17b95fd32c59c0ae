import { once } from "node:events";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import autocannon from "autocannon";
import { newSchema } from "../../services/shop/testing/database-under-test.ts";
import { type Server as PostgresqlServer, processorSecondsOf } from "../postgresql/server.ts";
import { builtService } from "../running/built-service.ts";
import { UNLIMITED } from "../running/unlimited.ts";
import { middle } from "./creates.ts";
import { type Server, startServer } from "./processes.ts";
import { bitAt } from "./shop.ts";

/** Turns that alternate between one process and two: a machine that slows down for a while slows both down. */
const TURNS = 5;
const SECONDS = 2;
/** Clients of each of the two load generators, which both ask one process or one each. */
const CLIENTS = 16;
const BITS = 500;
const PASSPHRASE = "the-benchmarks-own-long-passphrase";
const HEADERS = { authorization: `Bearer ${PASSPHRASE}`, "content-type": "application/json" };

/** What was answered in a turn, and microseconds of processor time that each of the answers took, of whom. */
type Turn = { readonly perSecond: number; readonly used: Used };
type Used = { readonly service: number; readonly database: number; readonly load: number };

/**
 * Reads a second of two processes of one shop beside those of one, built, on one PostgreSQL server, all of it on this machine with what
 * asks them. So the processor time of a request is shown too, and what it lets two processes gain at most.
 */
export async function twoProcessRows(server: PostgresqlServer, folder: string): Promise<string[]> {
  const service = [await builtService()];
  const settings = {
    ...UNLIMITED,
    RIMWISE_DATABASE: newSchema(server.url, "pool_size=10"),
    RIMWISE_SIGNING_KEYS: join(folder, "keys-of-both.json"),
    RIMWISE_FIRST_KEY: PASSPHRASE,
  };
  const one = await startServer(service, settings, "/readyz");
  const other = await startServer(service, settings, "/readyz");
  try {
    const id = await furnish(one);
    const reads = {
      "GET by id": `/v1/bits/${id}`,
      "a page of 50": "/v1/bits",
      "a search": "/v1/bits?q=cove",
    };
    const rows: string[] = [];
    for (const [name, path] of Object.entries(reads))
      rows.push(await rowOf(name, path, [one, other], server));
    const heading = `Reads a second from two processes over one, ${availableParallelism()} processors for them, PostgreSQL and the load (at least 1.5)`;
    return [heading, ...rows];
  } finally {
    await one.stop();
    await other.stop();
  }
}

async function furnish({ url }: Server): Promise<string> {
  let id = "";
  for (let index = 0; index < BITS; index += 1) {
    const body = JSON.stringify({ name: `Bit ${index}`, ...bitAt(index) });
    const answer = await fetch(`${url}/v1/bits`, { method: "POST", headers: HEADERS, body });
    if (answer.status !== 201) throw new Error(await answer.text());
    ({ id } = await answer.json());
  }
  return id;
}

async function rowOf(
  name: string,
  path: string,
  [one, other]: readonly [Server, Server],
  server: PostgresqlServer,
): Promise<string> {
  const turns: { readonly alone: Turn; readonly both: Turn }[] = [];
  for (let turn = 0; turn <= TURNS; turn += 1) {
    const measured = {
      alone: await turnOf([one, one], path, server),
      both: await turnOf([one, other], path, server),
    };
    // The first turn warms up.
    if (turn > 0) turns.push(measured);
  }
  const ratios = turns.map(({ alone, both }) => both.perSecond / alone.perSecond);
  const shown = (of: (turn: (typeof turns)[number]) => number) => middle(turns.map(of)).toFixed(0);
  const used = (part: keyof Used) =>
    `${part} ${shown(({ alone }) => alone.used[part])} and ${shown(({ both }) => both.used[part])}`;
  const most = middle(turns.map(({ alone }) => mostGain(alone.used))).toFixed(2);
  return (
    `  ${name.padEnd(14)} ${shown(({ alone }) => alone.perSecond).padStart(6)} ${shown(({ both }) => both.perSecond).padStart(6)}   ` +
    `${middle(ratios).toFixed(2)}, ${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)} (here at most ${most}); ` +
    `processor µs a request with one and two: ${used("service")}, ${used("database")}, ${used("load")}`
  );
}

/** One process answers no faster than its own processor, and any number no faster than all processors, which everything shares. */
function mostGain({ service, database, load }: Used): number {
  const ofAll = availableParallelism() / (service + database + load);
  return Math.min(2, ofAll / Math.min(1 / service, ofAll));
}

/** Both load generators at once, each in a thread of its own. */
async function turnOf(asked: readonly Server[], path: string, server: PostgresqlServer): Promise<Turn> {
  const processes = [...new Set(asked)];
  const serviceSeconds = () => processes.reduce((sum, each) => sum + each.cpuSeconds(), 0);
  const before = {
    service: serviceSeconds(),
    database: processorSecondsOf(server),
    load: process.cpuUsage(),
  };
  const started = performance.now();
  const counts = await Promise.all(asked.map(({ url }) => answersFrom(`${url}${path}`)));
  const seconds = (performance.now() - started) / 1000;
  const count = counts.reduce((sum, each) => sum + each, 0);
  const { user, system } = process.cpuUsage(before.load);
  const micros = (secondsUsed: number) => (secondsUsed / count) * 1e6;
  return {
    perSecond: count / seconds,
    used: {
      service: micros(serviceSeconds() - before.service),
      database: micros(processorSecondsOf(server) - before.database),
      load: (user + system) / count,
    },
  };
}

async function answersFrom(url: string): Promise<number> {
  const run = autocannon({
    ...{ url, method: "GET", headers: HEADERS, duration: SECONDS, connections: CLIENTS, workers: 1 },
  });
  const [result]: { requests: { total: number }; non2xx: number }[] = await once(run, "done");
  if (result === undefined || result.non2xx > 0) throw new Error(`${url} refused some requests`);
  return result.requests.total;
}
