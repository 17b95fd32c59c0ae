import cors from "@fastify/cors";
import type { App } from "./app-type.ts";

const EXPOSED = [
  "ETag",
  "Idempotent-Replayed",
  "Link",
  "Location",
  "RateLimit",
  "RateLimit-Policy",
  "Retry-After",
  "X-Request-Id",
];

/** Lets pages of the listed origins call the service. An empty list leaves it off, which is the default. */
export async function allowOrigins(app: App, origins: readonly string[]): Promise<void> {
  if (origins.length === 0) return;
  await app.register(cors, {
    origin: [...origins],
    methods: ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE"],
    exposedHeaders: EXPOSED,
    maxAge: 600,
  });
}
