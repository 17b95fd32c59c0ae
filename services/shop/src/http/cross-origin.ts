import cors from "@fastify/cors";
import type { App } from "./app-type.ts";

const EXPOSED = [
  "Date",
  "Deprecation",
  "ETag",
  "Idempotent-Replayed",
  "Link",
  "Location",
  "Preference-Applied",
  "RateLimit",
  "RateLimit-Policy",
  "Retry-After",
  "Sunset",
  "X-Request-Id",
];

/**
 * Lets pages of the listed origins call the service. An empty list leaves it off, which is the default. OPTIONS is answered by the
 * same routes as without it.
 */
export async function allowOrigins(app: App, origins: readonly string[]): Promise<void> {
  if (origins.length === 0) return;
  await app.register(cors, {
    origin: [...origins],
    methods: ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE"],
    exposedHeaders: EXPOSED,
    maxAge: 600,
    preflightContinue: true,
    strictPreflight: false,
  });
  app.addHook("onRequest", async (request, reply) => {
    // The plugin's own route stands at every path, whether something is there or not.
    if (request.method !== "OPTIONS" || request.routeOptions.url !== "*") return;
    reply.callNotFound();
    return reply;
  });
}
