import { ENGINE_VERSION } from "@rimwise/domain";
import type { Registry } from "prom-client";
import Type from "typebox";
import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import type { Store } from "../store/store.ts";
import { SERVICE_VERSION } from "../version.ts";
import { LivenessSchema, ReadinessSchema, VersionSchema } from "./schema.ts";

type Parts = { health: Store["health"]; isClosing: () => boolean; metrics: Registry };

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
      const checks = { ...(await health()), open: !isClosing() };
      const isReady = Object.values(checks).every(Boolean);
      return reply.code(isReady ? 200 : 503).send({ status: isReady ? "ready" : "not-ready", checks });
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
