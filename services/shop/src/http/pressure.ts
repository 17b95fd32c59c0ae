import underPressure from "@fastify/under-pressure";
import { tryAgainShortly } from "../problems/shortly.ts";
import type { App } from "./app-type.ts";

/** The first requests compile their schemas, and the first samples of the event loop's delay still show the start. */
const SETTLING_MS = 3000;

/**
 * Refuses requests while the event loop runs later than `busyAfterMs` (0: never), so that those already taken are finished.
 * Health checks pass: a monitor must see that a busy process is alive. Just after the start nothing is refused.
 */
export async function refuseUnderPressure(app: App, busyAfterMs: number): Promise<void> {
  let settledAt = 0;
  app.addHook("onListen", async () => {
    settledAt = performance.now() + SETTLING_MS;
  });
  await app.register(underPressure, {
    maxEventLoopDelay: busyAfterMs,
    pressureHandler: async ({ routeOptions }) => {
      if (routeOptions.config.scope === "public" || performance.now() < settledAt) return;
      // The delay is sampled every second, so a second later the answer may be another.
      throw tryAgainShortly("busy");
    },
  });
}
