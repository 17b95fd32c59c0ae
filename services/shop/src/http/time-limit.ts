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

/**
 * Ends what takes longer than it may: with a problem if nothing was sent yet, else by closing the connection. Not
 * Fastify's `handlerTimeout`, which stops counting when the body of a request has been read.
 */
export function limitTime(app: App, limitMs: number): void {
  app.addHook("onRequest", (request, reply, done) => {
    const timer = setTimeout(() => {
      if (reply.sent) return;
      if (reply.raw.headersSent) reply.raw.destroy();
      else reply.send(request.raw.complete ? tryAgainShortly("took-too-long") : tooSlow());
    }, request.routeOptions.config.timeLimitMs ?? limitMs);
    reply.raw.once("close", () => clearTimeout(timer));
    done();
  });
}
