import { Problem } from "../problems/problem.ts";
import type { App } from "./app-type.ts";

/** Refuses new work once the service has begun to close. Returns whether it has. */
export function refuseWhileClosing(app: App): () => boolean {
  let isClosing = false;
  app.addHook("preClose", async () => {
    isClosing = true;
  });
  app.addHook("onRequest", (_request, reply, done) => {
    if (!isClosing) return done();
    reply.header("Connection", "close");
    done(new Problem("closing", "Ask again when it is back.", { headers: { "Retry-After": "5" } }));
  });
  return () => isClosing;
}
