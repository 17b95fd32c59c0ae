import rateLimit from "@fastify/rate-limit";
import type { FastifyRequest } from "fastify";
import type { Config } from "../config.ts";
import { Problem } from "../problems/problem.ts";
import type { ExchangeCounts } from "../store/store.ts";
import type { App } from "./app-type.ts";
import { type RequestCounts, requestCounts } from "./request-counts.ts";

declare module "fastify" {
  interface FastifyContextConfig {
    /** Asked by monitors, and answered at little cost: never refused for being asked often. */
    isHealthCheck?: true;
  }
}

const WINDOW_S = 60;
const EXCHANGE_EVERY_MS = 1000;

type Limits = Pick<Config, "rateLimitPerMinute" | "publicRateLimitPerMinute">;

/**
 * Counts each caller's requests: by key, or by address if no valid key came, so that guessing keys runs dry without costing anybody
 * else; what needs no key, by address and apart. Health checks are not counted: whoever shares an address with a monitor could else
 * make a healthy service look dead. With several processes what each has counted is exchanged every second: until then a caller may ask
 * each of them. Headers follow draft-ietf-httpapi-ratelimit-headers-11. Register after authentication.
 */
export async function limitRates(app: App, limits: Limits, exchange?: ExchangeCounts): Promise<void> {
  const counts = requestCounts();
  await app.register(rateLimit, { global: false, store: counts.Store });
  if (exchange !== undefined) exchangeRegularly(app, counts, exchange);
  const withKey = counterOf(app, limits.rateLimitPerMinute, ({ caller, ip }) =>
    caller === null ? `address ${ip}` : `key ${caller.keyId}`,
  );
  const withoutKey = counterOf(app, limits.publicRateLimitPerMinute, ({ ip }) => `public ${ip}`);
  app.addHook("onRequest", async (request, reply) => {
    const { scope, isHealthCheck } = request.routeOptions.config;
    if (isHealthCheck) return;
    const { most, count: countRequest } = scope === undefined || scope === "public" ? withoutKey : withKey;
    const count = await countRequest(request);
    if (count.isAllowed) return;
    reply.header("RateLimit-Policy", `"minute";q=${most};w=${WINDOW_S}`);
    reply.header("RateLimit", `"minute";r=${Math.max(0, count.remaining)};t=${count.ttlInSeconds}`);
    if (!count.isExceeded) return;
    throw new Problem("too-many-requests", `At most ${most} requests a minute are answered.`, {
      headers: { "Retry-After": String(Math.max(1, count.ttlInSeconds)) },
    });
  });
}

function exchangeRegularly(app: App, { untold, heard }: RequestCounts, exchange: ExchangeCounts): void {
  let running: Promise<void> | undefined;

  async function exchangeNow(): Promise<void> {
    const own = untold();
    if (own.size > 0) heard(await exchange(own), own);
  }

  const timer = setInterval(() => {
    // Without the database each process goes on counting by itself.
    running ??= exchangeNow()
      .catch((error: unknown) =>
        app.log.debug({ err: error }, "the counts of requests could not be exchanged"),
      )
      .finally(() => {
        running = undefined;
      });
  }, EXCHANGE_EVERY_MS).unref();
  app.addHook("preClose", async () => {
    clearInterval(timer);
    await running;
  });
}

function counterOf(app: App, most: number, keyGenerator: (request: FastifyRequest) => string) {
  return { most, count: app.createRateLimit({ max: most, timeWindow: WINDOW_S * 1000, keyGenerator }) };
}
