import { ENGINE_VERSION } from "@rimwise/domain";
import type { Registry } from "prom-client";
import Type from "typebox";
import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import type { Store } from "../store/store.ts";
import { SERVICE_VERSION } from "../version.ts";
import { LivenessSchema, ReadinessSchema, VersionSchema } from "./schema.ts";

type Parts = { health: Store["health"]; isClosing: () => boolean; metrics: Registry };

/** What to do about each check that does not hold, the first cause first. */
const SENTENCES: readonly (readonly [check: string, sentence: string])[] = [
  ["open", "The service is shutting down. Ask another one."],
  ["database", "The database does not answer. It is asked again until it does."],
  ["migrations", "The database is not at this program's level. Start the service again."],
  ["writable", "The database cannot be written. Put it back in its place, or make it writable."],
  ["disk", "There is no room to write. Make some."],
];

export function healthRoutes(app: App, { health, isClosing, metrics }: Parts): void {
  for (const schema of [LivenessSchema, ReadinessSchema, VersionSchema]) app.addSchema(schema);

  app.get(
    "/livez",
    {
      config: { scope: "public", operation: "act", isHealthCheck: true },
      schema: {
        operationId: "getLiveness",
        tags: ["health"],
        summary: "Tell whether the process answers",
        response: { 200: ref(LivenessSchema) },
      },
    },
    async () => ({ status: "alive" }) as const,
  );

  app.get(
    "/readyz",
    {
      config: { scope: "public", operation: "act", isHealthCheck: true },
      schema: {
        operationId: "getReadiness",
        tags: ["health"],
        summary: "Tell whether the service can do its work",
        response: { 200: ref(ReadinessSchema), 503: ref(ReadinessSchema) },
      },
    },
    async (_request, reply) => {
      const { reason, ...held } = await health();
      const checks = { ...held, open: !isClosing() };
      const isReady = Object.values(checks).every(Boolean);
      if (isReady) return reply.send({ status: "ready", checks });
      const why = reason ?? sentenceOf(checks);
      return reply
        .code(503)

        .send({ status: "not-ready", checks, reason: why });
    },
  );

  app.get(
    "/version",
    {
      config: { scope: "public", operation: "act", isHealthCheck: true },
      schema: {
        operationId: "getVersion",
        tags: ["health"],
        summary: "Tell which version is running",
        response: { 200: ref(VersionSchema) },
      },
    },
    async () => ({ name: "rimwise", version: SERVICE_VERSION, engineVersion: ENGINE_VERSION }) as const,
  );

  app.get(
    "/metrics",
    {
      config: { scope: "metrics:read", operation: "act" },
      schema: {
        operationId: "getMetrics",
        tags: ["health"],
        summary: "Read the counters, in the text format of Prometheus",
        produces: ["text/plain"],
        response: { 200: Type.String({ description: "Counters and histograms, one a line." }) },
      },
    },
    async (_request, reply) => reply.type(metrics.contentType).send(await metrics.metrics()),
  );
}

function sentenceOf(checks: Readonly<Record<string, boolean>>): string {
  return SENTENCES.find(([check]) => checks[check] === false)?.[1] ?? "";
}
