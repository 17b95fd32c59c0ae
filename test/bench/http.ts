import { once } from "node:events";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { makePlan, type PlanInput } from "@rimwise/domain";
import autocannon from "autocannon";
import { PLAN_INPUTS } from "./plan-inputs.ts";
import { type Server, startServer } from "./processes.ts";

const SERVICE = fileURLToPath(new URL("../../services/shop/dist/main.js", import.meta.url));
const HERE = fileURLToPath(new URL(".", import.meta.url));

const CONNECTIONS = 8;
/** Turns that alternate between the service and bare Fastify: a machine that slows down slows both. */
const TURNS = 5;
const WARM_UP = 3000;
const STARTS = 5;
const MANY_REQUESTS = 100_000;
const PLANS_OF_A_BATCH = 100;
const PASSPHRASE = "the-benchmarks-own-long-passphrase";

/** Gives every path the text that is kept for it, and reads what it is sent: as little as Fastify can do. */
const BARE = `
  import { readFileSync } from "node:fs";
  import Fastify from "fastify";
  const app = Fastify();
  for (const [index, text] of JSON.parse(readFileSync(process.env.BARE_ANSWERS, "utf8")).entries()) {
    const answer = (_request, reply) => reply.type("application/json").send(text);
    app.get("/" + index, answer);
    app.post("/" + index, answer);
  }
  app.get("/livez", async () => ({ status: "alive" }));
  await app.listen({ port: Number(process.env.RIMWISE_PORT) });
`;

/** What is asked: of the service, and of bare Fastify with bodies of the same size. */
type Case = {
  readonly name: string;
  readonly path: string;
  readonly body?: string;
  readonly requests: number;
  readonly atMost: number;
  /** How many plans one answer holds, when what counts is the time of a plan in process. */
  readonly plans?: number;
};

/** The service, built and logging, beside bare Fastify: processor time of a request, the start, and memory. */
export async function benchHttp(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-bench-"));
  try {
    const shop = await startShop(folder, "shop");
    const cases = await casesOf(shop);
    const answers = await Promise.all(cases.map(async (each) => (await ask(shop, each)).text()));
    const bare = await startBare(folder, answers);
    const rows: string[] = [];
    for (const [index, each] of cases.entries()) rows.push(await rowOf(shop, bare, each, `/${index}`));
    await shop.stop();
    await bare.stop();
    return [
      `Processor time of a request, built, over the same from bare Fastify (${TURNS} turns each, ${CONNECTIONS} connections)`,
      ...rows,
      await startRow(folder, answers),
      await memoryRow(folder),
    ].join("\n");
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function casesOf(shop: Server): Promise<Case[]> {
  const { wood, policy: _, ...large } = input("large panel, table");
  const inline = { ...large, woodId: wood.id };
  const bit = await created(shop, "/v1/bits", { name: "Raised panel, 89 mm", ...large.bit });
  const router = await created(shop, "/v1/routers", { name: "Table router", ...large.router });
  const byIds = { ...inline, bit: { id: bit }, router: { id: router } };
  const batch = { requests: Array.from({ length: PLANS_OF_A_BATCH }, (_, index) => lighter(inline, index)) };
  return [
    { name: "GET by id", path: `/v1/bits/${bit}`, requests: 20_000, atMost: 1.8 },
    { name: "list of one", path: "/v1/bits?limit=1", requests: 20_000, atMost: 2.2 },
    preview("preview inline", inline, 4),
    preview("preview by ids", byIds, 5),
    {
      name: "batch of 100, a plan over one in process",
      path: "/v1/plans/preview-batch",
      body: JSON.stringify(batch),
      requests: 100,
      atMost: 2,
      plans: PLANS_OF_A_BATCH,
    },
  ];
}

/** The same cut with a lighter bit, so that no two plans of a batch are the same. */
function lighter<Input extends { readonly bit: PlanInput["bit"] }>(input: Input, byG: number): Input {
  return { ...input, bit: { ...input.bit, massG: Number(input.bit.massG) - byG } };
}

function preview(name: string, body: object, atMost: number): Case {
  return { name, path: "/v1/plans/preview", body: JSON.stringify(body), requests: 5000, atMost };
}

function input(name: string) {
  const found = PLAN_INPUTS[name];
  if (found === undefined) throw new Error(`no input ${name}`);
  return found;
}

async function rowOf(shop: Server, bare: Server, asked: Case, barePath: string): Promise<string> {
  const { name, requests, atMost, plans } = asked;
  await load(shop, asked, asked.path, WARM_UP / (plans ?? 1));
  await load(bare, asked, barePath, WARM_UP / (plans ?? 1));
  const pairs: { ours: number; theirs: number }[] = [];
  for (let turn = 0; turn < TURNS; turn += 1) {
    const ours = await load(shop, asked, asked.path, requests);
    const theirs =
      plans === undefined ? await load(bare, asked, barePath, requests) : planMicroseconds() * plans;
    pairs.push({ ours, theirs });
  }
  const ratios = pairs.map(({ ours, theirs }) => ours / theirs);
  return (
    `  ${name.padEnd(42)} ${inMicroseconds(pairs.map(({ ours }) => ours))} µs, ${inMicroseconds(pairs.map(({ theirs }) => theirs))} µs   ` +
    `ratio ${middle(ratios).toFixed(2)} (${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)}), at most ${atMost}`
  );
}

/** Microseconds of processor time that one request took of the server. */
async function load(server: Server, { body, plans }: Case, path: string, amount: number): Promise<number> {
  const before = server.cpuSeconds();
  const run = autocannon({
    url: `${server.url}${path}`,
    method: body === undefined ? "GET" : "POST",
    ...(body !== undefined && { body }),
    headers: headers(body !== undefined),
    amount: Math.ceil(amount),
    // A key has one large computation at a time.
    connections: plans === undefined ? Math.min(CONNECTIONS, Math.ceil(amount)) : 1,
  });
  const [result]: { non2xx: number }[] = await once(run, "done");
  if (result === undefined || result.non2xx > 0) throw new Error(`${path} refused some requests`);
  return ((server.cpuSeconds() - before) / amount) * 1e6;
}

/** Microseconds of processor time that one of the same plans takes in process. */
function planMicroseconds(): number {
  const planned = input("large panel, table");
  const inputs = Array.from({ length: PLANS_OF_A_BATCH }, (_, index) => lighter(planned, index));
  const count = 200 * PLANS_OF_A_BATCH;
  const before = process.cpuUsage();
  for (let round = 0; round < count / PLANS_OF_A_BATCH; round += 1) for (const each of inputs) makePlan(each);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / count;
}

async function startRow(folder: string, answers: readonly string[]): Promise<string> {
  const ratios: number[] = [];
  for (let turn = 0; turn < STARTS; turn += 1) {
    const shop = await startShop(folder, `start-${turn}`);
    const bare = await startBare(folder, answers);
    ratios.push(shop.startMs / bare.startMs);
    await shop.stop();
    await bare.stop();
  }
  return `  start to first 200 over bare Fastify: ratio ${middle(ratios).toFixed(2)} (${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)}), at most 2.5`;
}

async function memoryRow(folder: string): Promise<string> {
  const shop = await startShop(folder, "memory");
  const after = shop.residentMb();
  const asked = { name: "", path: "/v1/bits?limit=1", requests: MANY_REQUESTS, atMost: 0 };
  await load(shop, asked, asked.path, MANY_REQUESTS);
  const later = shop.residentMb();
  await shop.stop();
  return `  memory after the start ${after.toFixed(0)} MB, at most 110; after 10⁵ requests ${later.toFixed(0)} MB, at most 160`;
}

function startShop(folder: string, name: string): Promise<Server> {
  const settings = {
    RIMWISE_DATABASE: join(folder, `${name}.sqlite`),
    RIMWISE_FIRST_KEY: PASSPHRASE,
    RIMWISE_RATE_LIMIT_PER_MINUTE: "1000000",
    RIMWISE_BUSY_AFTER_MS: "0",
  };
  return startServer([SERVICE], settings, "/livez");
}

function startBare(folder: string, answers: readonly string[]): Promise<Server> {
  const file = join(folder, "answers.json");
  writeFileSync(file, JSON.stringify(answers));
  const script = join(HERE, "bare.mjs");
  writeFileSync(script, BARE);
  return startServer([script], { BARE_ANSWERS: file }, "/livez").finally(() => rmSync(script));
}

async function created(shop: Server, path: string, body: object): Promise<string> {
  const answer = await ask(shop, { path, body: JSON.stringify(body) });
  const { id }: { id: string } = await answer.json();
  return id;
}

async function ask(shop: Server, { path, body }: Pick<Case, "path" | "body">): Promise<Response> {
  const sent = body === undefined ? {} : { method: "POST", body };
  const answer = await fetch(`${shop.url}${path}`, { ...sent, headers: headers(body !== undefined) });
  if (!answer.ok) throw new Error(`${path} ${await answer.text()}`);
  return answer;
}

function headers(hasBody: boolean): Record<string, string> {
  const key = { authorization: `Bearer ${PASSPHRASE}` };
  return hasBody ? { ...key, "content-type": "application/json" } : key;
}

function inMicroseconds(values: readonly number[]): string {
  return middle(values).toFixed(0).padStart(5);
}

function middle(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)] ?? Number.NaN;
}
