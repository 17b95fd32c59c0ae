import underPressure from "@fastify/under-pressure";
import { Problem } from "../problems/problem.ts";
import type { App } from "./app-type.ts";

/**
 * Refuses requests while the event loop runs later than `busyAfterMs` (0: never), so that those already taken are finished.
 * Health checks pass: a monitor must see that a busy process is alive.
 */
export async function refuseUnderPressure(app: App, busyAfterMs: number): Promise<void> {
  await app.register(underPressure, {
    maxEventLoopDelay: busyAfterMs,
    pressureHandler: async ({ routeOptions }) => {
      if (routeOptions.config.scope === "public") return;
      throw new Problem("busy", "Try again shortly.", { headers: { "Retry-After": "10" } });
    },
  });
}
