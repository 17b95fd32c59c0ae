import type { FastifyReply } from "fastify";
import { Problem } from "../problems/problem.ts";
import { tryAgainShortly } from "../problems/shortly.ts";
import type { App } from "./app-type.ts";

declare module "fastify" {
  interface FastifyContextConfig {
    /** How long this route's answer may take, if longer than others. */
    timeLimitMs?: number;
  }
}

/** The connection ends with it: nobody waits for the rest of the body. */
function tooSlow(): Problem {
  return new Problem("request-too-slow", "The body did not arrive in time. Nothing was changed.", {
    headers: { Connection: "close" },
  });
}

/** How late an answer that takes too long may be ended. */
const LOOK_EVERY_MS = 100;

/**
 * Ends what takes longer than it may: with a problem if nothing was sent yet, else by closing the connection. Not
 * Fastify's `handlerTimeout`, which stops counting when the body of a request has been read. A look at all open answers now and then
 * costs less than a timer for each.
 */
export function limitTime(app: App, limitMs: number): void {
  const open = new Map<FastifyReply, number>();
  const looking = setInterval(() => {
    const nowMs = performance.now();
    for (const [reply, dueMs] of open) {
      if (dueMs > nowMs && !reply.raw.closed) continue;
      open.delete(reply);
      endLate(reply);
    }
  }, LOOK_EVERY_MS).unref();
  app.addHook("onClose", async () => clearInterval(looking));
  app.addHook("onRequest", (request, reply, done) => {
    open.set(reply, performance.now() + (request.routeOptions.config.timeLimitMs ?? limitMs));
    done();
  });
  app.addHook("onResponse", (_request, reply, done) => {
    open.delete(reply);
    done();
  });
}

function endLate(reply: FastifyReply): void {
  if (reply.sent || reply.raw.closed) return;
  if (reply.raw.headersSent) reply.raw.destroy();
  else reply.send(reply.request.raw.complete ? tryAgainShortly("took-too-long") : tooSlow());
}
