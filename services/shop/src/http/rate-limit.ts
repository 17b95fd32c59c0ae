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
const SECOND_MS = 1000;
const EXCHANGE_EVERY_MS = 1000;

type Limits = Pick<Config, "rateLimitPerMinute" | "publicRateLimitPerMinute">;

/** How many requests in a window, and the RateLimit-Policy that says so. */
type Limit = { readonly most: number; readonly policy: string };

/** What a request of a caller came to when it was counted. */
export type Counted = {
  readonly most: number;
  readonly isTooMany: boolean;
  readonly leftS: number;
  /** RateLimit-Policy of its answer. */
  readonly policy: string;
  /** RateLimit of its answer. */
  readonly limit: string;
};

/** Counts a request of a key for what needs one. */
export type CountKey = (keyId: string) => Counted;

/**
 * Counts each caller's requests: by key, or by address if no valid key came, so that guessing keys runs dry without costing anybody
 * else; what needs no key, by address and apart. Health checks are not counted: whoever shares an address with a monitor could else
 * make a healthy service look dead. With several processes what each has counted is exchanged every second: until then a caller may ask
 * each of them. Headers follow draft-ietf-httpapi-ratelimit-headers-11. Register after authentication.
 */
export function limitRates(app: App, limits: Limits, exchange?: ExchangeCounts): CountKey {
  const counts = requestCounts(WINDOW_S * SECOND_MS);
  const ofPublic = limitOf(limits.publicRateLimitPerMinute);
  const ofKeys = limitOf(limits.rateLimitPerMinute);
  if (exchange !== undefined) exchangeRegularly(app, counts, exchange);

  function countedOf(caller: string, { most, policy }: Limit): Counted {
    const { current, leftMs } = counts.count(caller);
    const leftS = Math.ceil(leftMs / SECOND_MS);
    return {
      most,
      isTooMany: current > most,
      leftS,
      policy,
      limit: `"minute";r=${Math.max(0, most - current)};t=${leftS}`,
    };
  }

  app.addHook("onRequest", (request, reply, done) => {
    const { scope, isHealthCheck } = request.routeOptions.config;
    if (isHealthCheck) return done();
    // What no route takes needs no key either.
    const isPublic = scope === undefined || scope === "public";
    const { most, isTooMany, leftS, policy, limit } = isPublic
      ? countedOf(`public ${request.ip}`, ofPublic)
      : countedOf(callerIn(request), ofKeys);
    reply.header("RateLimit-Policy", policy);
    reply.header("RateLimit", limit);
    if (!isTooMany) return done();
    done(
      new Problem("too-many-requests", `At most ${most} requests a minute are answered.`, {
        headers: { "Retry-After": String(Math.max(1, leftS)) },
      }),
    );
  });
  return (keyId) => countedOf(keyCaller(keyId), ofKeys);
}

function limitOf(most: number): Limit {
  return { most, policy: `"minute";q=${most};w=${WINDOW_S}` };
}

function callerIn({ caller, ip }: FastifyRequest): string {
  return caller === null ? `address ${ip}` : keyCaller(caller.keyId);
}

function keyCaller(keyId: string): string {
  return `key ${keyId}`;
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
