import { once } from "node:events";
import { buildApp, grantFirstKey, openStore, readConfig } from "@rimwise/shop";
import autocannon from "autocannon";
import Fastify, { type FastifyInstance } from "fastify";
import { PLAN_INPUTS } from "./plan-inputs.ts";

const SECONDS = 4;
const CONNECTIONS = 8;

/** A preview over HTTP beside a bare Fastify that takes and gives bodies of the same size, in one process each run. */
export async function benchHttp(): Promise<string> {
  const rows: string[] = [];
  for (const [name, { wood, policy: _, ...rest }] of Object.entries(PLAN_INPUTS)) {
    const body = JSON.stringify({ ...rest, woodId: wood.id });
    const shop = await openShop();
    const answer = await (await post(shop.url, shop.key, body)).text();
    const ours = await requestsPerSecond(shop.url, shop.key, body);
    await shop.close();
    const bare = await openBare(answer);
    const theirs = await requestsPerSecond(bare.url, "none", body);
    await bare.close();
    rows.push(
      `  ${name.padEnd(28)} ${(1e6 / ours).toFixed(0).padStart(5)} µs   bare Fastify ${(1e6 / theirs).toFixed(0).padStart(5)} µs   ` +
        `ratio ${(theirs / ours).toFixed(2)}   (${body.length} bytes in, ${answer.length} out)`,
    );
  }
  return [
    `One preview over HTTP (mean of ${SECONDS} s, ${CONNECTIONS} connections, load from the same machine)`,
    ...rows,
  ].join("\n");
}

async function openShop() {
  const store = openStore(":memory:");
  const key = (await grantFirstKey(store, undefined)) ?? "";
  const config = readConfig({
    RIMWISE_DATABASE: ":memory:",
    RIMWISE_LOG_LEVEL: "silent",
    RIMWISE_RATE_LIMIT_PER_MINUTE: "1000000",
  });
  const { app } = await buildApp({ config, store });
  const url = `${await app.listen({ port: 0 })}/v1/plans/preview`;
  return {
    url,
    key,
    close: async () => {
      await app.close();
      store.close();
    },
  };
}

async function openBare(answer: string) {
  const app: FastifyInstance = Fastify();
  app.post("/", async (_request, reply) => reply.type("application/json").send(answer));
  return { url: await app.listen({ port: 0 }), close: () => app.close() };
}

function post(url: string, key: string, body: string): Promise<Response> {
  return fetch(url, { method: "POST", body, headers: headersFor(key) });
}

async function requestsPerSecond(url: string, key: string, body: string): Promise<number> {
  const run = autocannon({
    url,
    method: "POST",
    body,
    headers: headersFor(key),
    duration: SECONDS,
    connections: CONNECTIONS,
  });
  const [result]: { requests: { average: number }; non2xx: number }[] = await once(run, "done");
  if (result === undefined || result.non2xx > 0) throw new Error(`${url} refused some requests`);
  return result.requests.average;
}

function headersFor(key: string) {
  return { authorization: `Bearer ${key}`, "content-type": "application/json" };
}
