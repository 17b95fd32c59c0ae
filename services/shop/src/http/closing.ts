import { Problem } from "../problems/problem.ts";
import type { App } from "./app-type.ts";

/** Supervisors commonly kill what has not ended 10 s after it was asked to: what was acknowledged must be put away before. */
const CUT_STALLED_AFTER_MS = 5000;

/**
 * Refuses new work once the service has begun to close, and in the end cuts off callers who neither send the rest of their
 * request nor read their answer. Returns whether it is closing.
 */
export function refuseWhileClosing(app: App): () => boolean {
  let isClosing = false;
  let cut: NodeJS.Timeout | undefined;
  app.addHook("preClose", async () => {
    isClosing = true;
    cut = setTimeout(() => app.server.closeAllConnections(), CUT_STALLED_AFTER_MS).unref();
  });
  app.addHook("onClose", async () => clearTimeout(cut));
  app.addHook("onRequest", (_request, reply, done) => {
    if (!isClosing) return done();
    reply.header("Connection", "close");
    done(new Problem("closing", "Ask again when it is back.", { headers: { "Retry-After": "5" } }));
  });
  return () => isClosing;
}
