import type { IncomingMessage } from "node:http";
import { newUuid } from "../store/id.ts";
import type { App } from "./app-type.ts";

const REQUEST_ID = /^[A-Za-z0-9._-]{1,64}$/;

/** W3C Trace Context, version 00. */
const TRACEPARENT = /^00-[0-9a-f]{32}-[0-9a-f]{16}-[0-9a-f]{2}$/;

/** The caller's own request id if it is harmless, else a new one. */
export function requestIdOf({ headers }: Pick<IncomingMessage, "headers">): string {
  const given = headers["x-request-id"];
  return typeof given === "string" && REQUEST_ID.test(given) ? given : newUuid();
}

/** A well-formed trace context, or nothing. */
export function traceparentOf({ headers }: Pick<IncomingMessage, "headers">): string | undefined {
  const given = headers["traceparent"];
  return typeof given === "string" && TRACEPARENT.test(given) ? given : undefined;
}

/** Echoes the request id and the trace context on every answer. */
export function identifyRequests(app: App): void {
  app.addHook("onRequest", (request, reply, done) => {
    reply.header("X-Request-Id", request.id);
    const traceparent = traceparentOf(request);
    if (traceparent !== undefined) reply.header("traceparent", traceparent);
    done();
  });
}
