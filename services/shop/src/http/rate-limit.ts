import rateLimit from "@fastify/rate-limit";
import { Problem } from "../problems/problem.ts";
import type { App } from "./app-type.ts";

const WINDOW_S = 60;

/**
 * Counts each caller's requests: by key, or by address if no valid key came, so that guessing keys
 * runs dry without costing anybody else. Headers follow draft-ietf-httpapi-ratelimit-headers-11. Register after authentication.
 */
export async function limitRates(app: App, mostPerMinute: number): Promise<void> {
  await app.register(rateLimit, { global: false });
  const countRequest = app.createRateLimit({
    max: mostPerMinute,
    timeWindow: WINDOW_S * 1000,
    keyGenerator: ({ caller, ip }) => (caller === null ? `address ${ip}` : `key ${caller.keyId}`),
  });
  const policy = `"minute";q=${mostPerMinute};w=${WINDOW_S}`;
  app.addHook("onRequest", async (request, reply) => {
    if (request.routeOptions.config.scope === "public") return;
    const count = await countRequest(request);
    if (count.isAllowed) return;
    reply.header("RateLimit-Policy", policy);
    reply.header("RateLimit", `"minute";r=${Math.max(0, count.remaining)};t=${count.ttlInSeconds}`);
    if (!count.isExceeded) return;
    throw new Problem("too-many-requests", `At most ${mostPerMinute} requests a minute are answered.`, {
      headers: { "Retry-After": String(Math.max(1, count.ttlInSeconds)) },
    });
  });
}
